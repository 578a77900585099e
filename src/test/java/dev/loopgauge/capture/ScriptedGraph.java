package dev.loopgauge.capture;

import java.util.List;

/** A scripted session on a graph that states what it was told to, one statement for each look. */
public final class ScriptedGraph implements GraphSession {
  private final ScriptedSession session;
  private final List<Stated> stated;
  private int looks;

  /** A session whose graph states these one after another; the last one goes on for ever. */
  public ScriptedGraph(ScriptedSession session, Stated... stated) {
    this.session = session;
    this.stated = List.of(stated);
  }

  /** A statement that is the same from either end. */
  public static Stated both(int samples) {
    return ends(samples, samples);
  }

  /** A statement that differs from the two ends. */
  public static Stated ends(int fromSend, int toReturn) {
    return new Stated(new PortLatency(fromSend, fromSend), new PortLatency(toReturn, toReturn));
  }

  @Override
  public Stated stated(int send, int ret) {
    looks++;
    return stated.get(Math.min(looks, stated.size()) - 1);
  }

  @Override
  public SessionInfo info() {
    return session.info();
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    return session.capture(take);
  }

  @Override
  public void close() {
    session.close();
  }
}
