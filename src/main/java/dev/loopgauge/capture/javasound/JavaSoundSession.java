package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;

/** Takes on a flow of sound that runs from opening to closing. */
final class JavaSoundSession implements AudioSession {
  private final SessionRequest request;
  private final SessionInfo info;
  private final Duplex flow;

  private JavaSoundSession(SessionRequest request, SessionInfo info, Duplex flow) {
    this.request = request;
    this.info = info;
    this.flow = flow;
  }

  /**
   * Lets sound flow through open lines; they are closed when it doesn't.
   *
   * @param stallNanos after how many ns without a frame the sound counts as stopped
   */
  static JavaSoundSession start(OpenLines lines, SessionRequest request, long stallNanos)
      throws CaptureException {
    PcmLine output = lines.output().orElse(lines.input());
    SessionInfo info =
        new SessionInfo(
            JavaSoundBackend.NAME,
            output.device(),
            lines.input().device(),
            lines.rate(),
            output.bufferFrames(),
            false,
            lines.source());
    Duplex flow = new Duplex(lines, stallNanos);
    try {
      flow.start();
    } catch (CaptureException e) {
      flow.close();
      throw e;
    }
    return new JavaSoundSession(request, info, flow);
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
    flow.run(running);
    return running.capture();
  }

  @Override
  public void close() {
    flow.close();
  }
}
