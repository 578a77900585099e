package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SimulatedSessionTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int FRAMES = 48_000;
  private static final int CARD = 535;
  private static final double LOOP = 418.4;
  private static final double FLOOR = Decibels.toFactor(-90);

  @Test
  void returnOneIsTheCableAndReturnTwoTheRig() throws CaptureException {
    Signal sweep = new ExponentialSweep(100, 10_000, 0.5).render(RATE);
    Capture capture = session(both(), 1).capture(take(sweep, sweep));
    Scene scene = new Scene(RATE, 64, List.of(), new SplittableRandom(1));
    double[] sound = new double[FRAMES];
    sweep.copyTo(0, sound, 0, FRAMES);
    assertNear(new DelayEffect(CARD).on(sound, scene), capture.returns().get(0));
    assertNear(new DelayEffect(CARD + LOOP).on(sound, scene), capture.returns().get(1));
    assertEquals(List.of(), capture.incidents());
  }

  @Test
  void keepsEachReturnToItsOwnSend() throws CaptureException {
    Signal sweep = new ExponentialSweep(100, 10_000, 0.5).render(RATE);
    Capture capture = session(both(), 1).capture(take(Signal.silence(RATE, 10), sweep));
    assertEquals(-90, Decibels.ofFactor(capture.returns().get(0).rms()), 0.5);
    assertEquals(-6, Decibels.ofFactor(capture.returns().get(1).rms()), 1);
  }

  @Test
  void ordersChannelsAsAskedFor() throws CaptureException {
    Signal sweep = new ExponentialSweep(100, 10_000, 0.5).render(RATE);
    SessionRequest swapped = request(List.of(2), List.of(2, 1));
    Capture capture = session(swapped, 1).capture(take(sweep));
    assertEquals(-6, Decibels.ofFactor(capture.returns().get(0).rms()), 1);
    assertEquals(-90, Decibels.ofFactor(capture.returns().get(1).rms()), 0.5);
  }

  @ParameterizedTest
  @CsvSource({"noise=-30", "hum=-20", "wrong-signal", "gain=-12"})
  void sameSeedSameSamples(String fault) throws CaptureException {
    Take take = take(Signal.silence(RATE, 10), Signal.silence(RATE, 10));
    Capture one = session(both(), 5, fault).capture(take);
    Capture two = session(both(), 5, fault).capture(take);
    for (int channel = 0; channel < 2; channel++) {
      assertArrayEquals(
          one.returns().get(channel).toArray(), two.returns().get(channel).toArray(), "seed 5");
    }
  }

  @Test
  void noTwoTakesHaveTheSameNoise() throws CaptureException {
    Take take = take(Signal.silence(RATE, 10), Signal.silence(RATE, 10));
    SimulatedSession session = session(both(), 5);
    double first = session.capture(take).returns().get(0).at(0);
    assertNotEquals(first, session.capture(take).returns().get(0).at(0), "seed 5");
  }

  @Test
  void neverPassesFullScale() throws CaptureException {
    Signal sweep = new ExponentialSweep(100, 10_000, 0.5).render(RATE);
    Capture capture = session(both(), 1, "clip=-6").capture(take(sweep, sweep.times(0.1)));
    assertEquals(1, capture.returns().get(1).peak());
  }

  @ParameterizedTest
  @CsvSource({"gone, GONE", "short, SHORT", "feedback, FEEDBACK"})
  void failsAsARealCardDoes(String fault, CaptureException.Kind kind) {
    Take take = take(Signal.silence(RATE, 10), Signal.silence(RATE, 10));
    SimulatedSession session = session(both(), 1, fault);
    assertEquals(kind, assertThrows(CaptureException.class, () -> session.capture(take)).kind());
  }

  @Test
  void refusesTakesThatDoNotFit() {
    SimulatedSession session = session(both(), 1);
    Signal other = Signal.silence(new SampleRate(44_100), 10);
    assertThrows(IllegalArgumentException.class, () -> session.capture(take(other, other)));
    assertThrows(IllegalArgumentException.class, () -> session.capture(take()));
    session.close();
    Signal fits = Signal.silence(RATE, 10);
    assertThrows(IllegalStateException.class, () -> session.capture(take(fits, fits)));
  }

  /** Alike but for the noise floor: six times its level is passed once in 500 million samples. */
  private static void assertNear(double[] expected, Signal found) {
    assertArrayEquals(expected, found.toArray(), 6 * FLOOR, "seed 1");
  }

  private static Take take(Signal... sends) {
    return new Take(List.of(sends), FRAMES, List.of(new Take.Segment(24_000, FRAMES)));
  }

  private static SessionRequest both() {
    return request(List.of(1, 2), List.of(1, 2));
  }

  private static SessionRequest request(List<Integer> sends, List<Integer> returns) {
    return new SessionRequest(
        Optional.empty(), Optional.empty(), sends, returns, Optional.of(RATE), 0);
  }

  private static SimulatedSession session(SessionRequest request, long seed, String... faults) {
    List<PathFault> parsed =
        List.of(faults).stream().map(text -> PathFault.parse(text, List.of())).toList();
    Chain chain = Rigs.chain();
    Plugs plugs = Plugs.measuring(chain, chain.path(Rigs.PATH), Optional.empty());
    Epochs epochs = Epochs.of(chain, plugs, parsed, RATE);
    SessionInfo info = new SessionInfo("simulated", "rig", "rig", RATE, 256, false);
    return new SimulatedSession(
        request, info, epochs, CARD, new SplittableRandom(seed), Pace.UNBOUND);
  }
}
