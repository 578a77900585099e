package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class StopSessionTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final SessionInfo INFO = new SessionInfo("jack", "A", "A", RATE, 256, true);
  private static final SessionRequest OPENED =
      new SessionRequest(
          Optional.empty(), Optional.empty(), List.of(1, 2), List.of(1, 2, 3), Optional.empty(), 0);
  private static final Patching HOUSE = onReturn(2);
  private static final Patching MONITOR = onReturn(3);

  @Test
  void aPathReadLaterFindsTheTakesThatTheFirstOnePlayed() throws Exception {
    ScriptedSession card =
        new ScriptedSession(INFO, take -> heard(take, 1), take -> heard(take, 2));
    StopSession stop = new StopSession(card, OPENED, List.of(1, 2));
    AudioSession house = stop.of(HOUSE);
    AudioSession monitor = stop.of(MONITOR);

    assertEquals(12, first(house.capture(take(10))));
    house.renew();
    assertEquals(22, first(house.capture(take(4))));
    assertEquals(13, first(monitor.capture(take(10))));
    monitor.renew();
    assertEquals(23, first(monitor.capture(take(4))));
    assertEquals(2, card.takes().size());
    assertEquals(1, card.renewed());
  }

  @Test
  void eachPathKeepsWhatWasRecordedBeforeTheSoundBrokeOff() throws Exception {
    ScriptedSession card =
        new ScriptedSession(
            INFO,
            take -> {
              throw new CaptureException(CaptureException.Kind.SHORT, "lost", "try")
                  .after(heard(take, 1));
            });
    StopSession stop = new StopSession(card, OPENED, List.of(1, 2));
    for (Patching path : List.of(HOUSE, MONITOR)) {
      CaptureException lost =
          assertThrows(CaptureException.class, () -> stop.of(path).capture(take(10)));
      assertEquals(10 + path.rig().ret(), first(lost.before().orElseThrow()));
    }
    assertEquals(1, card.takes().size());
  }

  private static double first(Capture capture) {
    return capture.returns().get(0).at(0);
  }

  private static Take take(int frames) {
    return new Take(List.of(Signal.of(RATE, 1.0), Signal.of(RATE, 1.0)), frames, List.of());
  }

  /** Each return tells the number of the take and its own. */
  private static Capture heard(Take take, int number) {
    List<Signal> returns = new ArrayList<>();
    for (int ret : OPENED.returns()) {
      double[] sound = new double[take.frames()];
      Arrays.fill(sound, 10 * number + ret);
      returns.add(Signal.of(RATE, sound));
    }
    return new Capture(returns, List.of());
  }

  private static Patching onReturn(int ret) {
    return new Patching(new ChannelPair(2, ret), Optional.of(new ChannelPair(1, 1)));
  }
}
