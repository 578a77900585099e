package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ForwardedSession;
import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import java.util.Optional;
import java.util.function.Consumer;

/** Remembers the last session that was opened and the last take it recorded. */
public final class SessionTap {
  private final Consumer<Capture> listener;
  private Optional<SessionInfo> info = Optional.empty();
  private Optional<Capture> capture = Optional.empty();

  /** Remembers only. */
  public SessionTap() {
    this(taken -> {});
  }

  /** Tells of each take as well. */
  SessionTap(Consumer<Capture> listener) {
    this.listener = listener;
  }

  /** What was opened last. */
  public Optional<SessionInfo> info() {
    return info;
  }

  /** What was recorded last. */
  public Optional<Capture> capture() {
    return capture;
  }

  /** The session, overheard from now on. */
  public AudioSession on(AudioSession session) {
    info = Optional.of(session.info());
    return session instanceof GraphSession graph ? new Graph(graph) : new Plain(session);
  }

  private Capture heard(Capture taken) {
    capture = Optional.of(taken);
    listener.accept(taken);
    return taken;
  }

  private class Plain extends ForwardedSession {
    Plain(AudioSession session) {
      super(session);
    }

    @Override
    public Capture capture(Take take) throws CaptureException {
      return heard(super.capture(take));
    }
  }

  private final class Graph extends Plain implements GraphSession {
    private final GraphSession graph;

    Graph(GraphSession graph) {
      super(graph);
      this.graph = graph;
    }

    @Override
    public Stated stated(int send, int ret) throws CaptureException {
      return graph.stated(send, ret);
    }
  }
}
