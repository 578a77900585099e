package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;

/** Takes on a flow of sound that runs from opening to closing, or until sound is lost. */
final class JavaSoundSession implements AudioSession {
  /** After this many losses in a row without a frame between them the sound counts as gone. */
  private static final int MOST_IN_VAIN = 3;

  private final SessionRequest request;
  private SessionInfo info;
  private final Opener opener;
  private final long stallNanos;
  private Duplex flow;
  private boolean lost;
  private boolean used;

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
    SessionInfo shared =
        new SessionInfo(
            JavaSoundBackend.NAME,
            output.device(),
            lines.input().device(),
            lines.rate(),
            output.bufferFrames(),
            false,
            lines.source(),
            flow.latest());
    return lines.alone() ? shared.takenAlone() : shared;
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
    if (!used && flow.hasLostFrames()) {
      lost = true;
      renew(); // Nothing has been measured yet, so the offset may still be another.
    }
    used = true;
    LineTake running = new LineTake(take, rate, request.sends(), request.returns());
    try {
      flow.run(running);
    } catch (CaptureException e) {
      lost = e.kind() == CaptureException.Kind.SHORT;
      throw lost ? running.beforeLoss(e.getMessage()).map(e::after).orElse(e) : e;
    }
    return running.capture();
  }

  /** Where sound is lost the flow starts anew, and the clock says how many frames that took. */
  @Override
  public void stream(BlockListener listener) throws CaptureException {
    LineStream running = new LineStream(request.returns(), info.rate().hertz());
    long started = System.nanoTime();
    int inVain = 0;
    while (true) {
      long before = running.next();
      try {
        flow.run(running, listener);
        return;
      } catch (CaptureException e) {
        inVain = running.next() > before ? 0 : inVain + 1;
        if (e.kind() != CaptureException.Kind.SHORT || inVain == MOST_IN_VAIN) {
          throw e;
        }
        lost = true;
        renew();
        goOn(running, listener, System.nanoTime() - started, e.getMessage());
      }
    }
  }

  private void goOn(LineStream running, BlockListener listener, long nanos, String why) {
    long due = running.next();
    long now = Math.max(due, Math.round(nanos / 1e9 * info.rate().hertz()));
    running.goOnAt(now);
    listener.lost(new LostFrames(due, now - due, why));
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
