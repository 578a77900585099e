package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;

/** Takes on a flow of sound that runs from opening to closing, or until sound is lost. */
final class JavaSoundSession implements AudioSession {
  private final SessionRequest request;
  private SessionInfo info;
  private final Opener opener;
  private final long stallNanos;
  private Duplex flow;
  private boolean lost;

  /** Opens the lines, the same ones each time. */
  interface Opener {
    /** New lines, to be closed by the caller. */
    OpenLines open() throws CaptureException;
  }

  private JavaSoundSession(
      SessionRequest request, SessionInfo info, Opener opener, Duplex flow, long stallNanos) {
    this.request = request;
    this.info = info;
    this.opener = opener;
    this.flow = flow;
    this.stallNanos = stallNanos;
  }

  /**
   * Opens lines and lets sound flow through them; they are closed when it doesn't.
   *
   * @param stallNanos after how many ns without a frame the sound counts as stopped
   */
  static JavaSoundSession start(Opener opener, SessionRequest request, long stallNanos)
      throws CaptureException {
    OpenLines lines = opener.open();
    Duplex flow = flow(lines, stallNanos);
    return new JavaSoundSession(request, info(lines, flow), opener, flow, stallNanos);
  }

  private static SessionInfo info(OpenLines lines, Duplex flow) {
    PcmLine output = lines.output().orElse(lines.input());
    return new SessionInfo(
        JavaSoundBackend.NAME,
        output.device(),
        lines.input().device(),
        lines.rate(),
        output.bufferFrames(),
        false,
        lines.source(),
        flow.latest());
  }

  private static Duplex flow(OpenLines lines, long stallNanos) throws CaptureException {
    Duplex flow = new Duplex(lines, stallNanos);
    try {
      flow.start();
    } catch (CaptureException e) {
      flow.close();
      throw e;
    }
    return flow;
  }

  @Override
  public SessionInfo info() {
    return info;
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    SampleRate rate = info.rate();
    take.checkFits(request.sends().size(), rate);
    LineTake running = new LineTake(take, rate, request.sends(), request.returns());
    try {
      flow.run(running);
    } catch (CaptureException e) {
      lost = e.kind() == CaptureException.Kind.SHORT;
      throw lost ? running.beforeLoss(e.getMessage()).map(e::after).orElse(e) : e;
    }
    return running.capture();
  }

  @Override
  public void renew() throws CaptureException {
    if (lost) {
      flow.close();
      OpenLines lines = opener.open();
      flow = flow(lines, stallNanos);
      lost = false;
      SessionInfo now = info(lines, flow);
      boolean same = now.rate().equals(info.rate()) && now.bufferSamples() == info.bufferSamples();
      info = now;
      if (!same) {
        throw new CaptureException(
            CaptureException.Kind.GONE,
            "\"%s\" opens otherwise than before sound was lost.".formatted(info.input()),
            "See that nobody changes the device meanwhile, and measure again.");
      }
    }
  }

  @Override
  public void close() {
    flow.close();
  }
}
