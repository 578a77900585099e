package dev.loopgauge.capture;

import java.util.ArrayList;
import java.util.List;

/** A session that gives each take the answer it was told to give; the last one goes on for ever. */
public final class ScriptedSession implements AudioSession {
  /** What becomes of a take. */
  public interface Answer {
    /** The recording, or the failure. */
    Capture to(Take take) throws CaptureException;
  }

  private final SessionInfo info;
  private final List<Answer> answers;
  private final List<Take> takes = new ArrayList<>();
  private boolean closed;
  private int renewed;

  /** A session with answers to its takes, in order. */
  public ScriptedSession(SessionInfo info, Answer... answers) {
    this.info = info;
    this.answers = List.of(answers);
  }

  /** An answer that is a failure. */
  public static Answer failing(CaptureException.Kind kind) {
    return take -> {
      throw new CaptureException(kind, "scripted: " + kind, "nothing to try");
    };
  }

  /** What was played so far. */
  public List<Take> takes() {
    return List.copyOf(takes);
  }

  /** Whether it was closed. */
  public boolean closed() {
    return closed;
  }

  @Override
  public SessionInfo info() {
    return info;
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    if (closed) {
      throw new AssertionError("a take was played on a closed session");
    }
    takes.add(take);
    Capture heard = answers.get(Math.min(takes.size(), answers.size()) - 1).to(take);
    float[][] returns = new float[heard.returns().size()][take.frames()];
    for (int ret = 0; ret < returns.length; ret++) {
      for (int i = 0; i < take.frames(); i++) {
        returns[ret][i] = (float) heard.returns().get(ret).at(i);
      }
    }
    take.watch().recorded(returns, take.frames());
    return heard;
  }

  @Override
  public void renew() {
    renewed++;
  }

  /** How often it was asked to start anew. */
  public int renewed() {
    return renewed;
  }

  @Override
  public void close() {
    closed = true;
  }
}
