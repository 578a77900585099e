package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A round's session as one stop sees it: the stop's sends play and all others are silent, and its
 * paths are read one after the other from the same takes. What the first path has played, sound
 * that was lost and is played again included, the others find there already.
 */
final class StopSession {
  /** What became of one take. */
  private record Played(Optional<Capture> capture, Optional<CaptureException> partly) {
    Capture narrowed(UnaryOperator<Capture> narrow) throws CaptureException {
      if (partly.isPresent()) {
        throw partly.get().after(narrow.apply(partly.get().before().orElseThrow()));
      }
      return narrow.apply(capture.orElseThrow());
    }
  }

  private final AudioSession session;
  private final SessionRequest opened;
  private final List<Integer> sends;
  private final List<Played> played = new ArrayList<>();

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
      private int next;
      private boolean renew;

      @Override
      public SessionInfo info() {
        return session.info();
      }

      @Override
      public Capture capture(Take take) throws CaptureException {
        if (next == played.size()) {
          if (renew) {
            session.renew();
          }
          played.add(play(take));
        }
        renew = false;
        return played.get(next++).narrowed(capture -> narrow(capture, patching));
      }

      /** Only where the take that comes next hasn't been played for another path. */
      @Override
      public void renew() {
        renew = true;
      }

      @Override
      public void close() {}
    };
  }

  /** What one path's channels held of the first take, where it was recorded to its end. */
  Optional<Capture> heard(Patching patching) {
    return played.stream()
        .findFirst()
        .flatMap(Played::capture)
        .map(capture -> narrow(capture, patching));
  }

  private Played play(Take take) throws CaptureException {
    try {
      return new Played(Optional.of(session.capture(widened(take))), Optional.empty());
    } catch (CaptureException e) {
      if (e.before().isEmpty()) {
        throw e;
      }
      return new Played(Optional.empty(), Optional.of(e));
    }
  }

  private Take widened(Take take) {
    Signal silence = Signal.of(session.info().rate(), new double[1]);
    List<Signal> all =
        opened.sends().stream()
            .map(send -> sends.contains(send) ? take.sends().get(sends.indexOf(send)) : silence)
            .toList();
    return new Take(all, take.frames(), take.listening(), take.watch());
  }

  private Capture narrow(Capture capture, Patching patching) {
    return new Capture(
        patching.returns().stream()
            .map(ret -> capture.returns().get(opened.returns().indexOf(ret)))
            .toList(),
        capture.incidents(),
        capture.rate());
  }
}
