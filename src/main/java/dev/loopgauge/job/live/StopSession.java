package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Optional;

/**
 * A round's session as one stop sees it: the stop's sends play and all others are silent, and its
 * paths are read one after the other from one take.
 */
final class StopSession {
  private final AudioSession session;
  private final SessionRequest opened;
  private final List<Integer> sends;
  private Optional<Capture> heard = Optional.empty();

  /**
   * A stop that has played nothing yet.
   *
   * @param session open for the whole round
   * @param opened the channels that it was opened with
   * @param sends the sends that play
   */
  StopSession(AudioSession session, SessionRequest opened, List<Integer> sends) {
    this.session = session;
    this.opened = opened;
    this.sends = sends;
  }

  /** The session with the channels of one path. Closing it leaves the round's session open. */
  AudioSession of(Patching patching) {
    return new AudioSession() {
      @Override
      public SessionInfo info() {
        return session.info();
      }

      @Override
      public Capture capture(Take take) throws CaptureException {
        return narrow(whole(take), patching);
      }

      @Override
      public void close() {}
    };
  }

  /** What one path's channels held of the take, where it was played. */
  Optional<Capture> heard(Patching patching) {
    return heard.map(capture -> narrow(capture, patching));
  }

  private Capture whole(Take take) throws CaptureException {
    if (heard.isEmpty()) {
      heard = Optional.of(session.capture(widened(take)));
    }
    return heard.get();
  }

  private Take widened(Take take) {
    Signal silence = Signal.of(session.info().rate(), new double[1]);
    List<Signal> all =
        opened.sends().stream()
            .map(send -> sends.contains(send) ? take.sends().get(sends.indexOf(send)) : silence)
            .toList();
    return new Take(all, take.frames(), take.listening());
  }

  private Capture narrow(Capture capture, Patching patching) {
    return new Capture(
        patching.returns().stream()
            .map(ret -> capture.returns().get(opened.returns().indexOf(ret)))
            .toList(),
        capture.incidents());
  }
}
