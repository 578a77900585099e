package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import java.util.ArrayList;
import java.util.List;

/** A session that keeps what it recorded. */
public final class KeptSession implements AudioSession {
  private final AudioSession session;
  private final List<Capture> captures = new ArrayList<>();

  /** A session that does what another one does, which it closes with itself. */
  public KeptSession(AudioSession session) {
    this.session = session;
  }

  /** All captures so far, in their order. */
  public List<Capture> captures() {
    return List.copyOf(captures);
  }

  @Override
  public SessionInfo info() {
    return session.info();
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    Capture capture = session.capture(take);
    captures.add(capture);
    return capture;
  }

  @Override
  public void close() {
    session.close();
  }
}
