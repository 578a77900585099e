package dev.loopgauge.estimate.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import dev.loopgauge.signal.filter.BandPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.LowPass;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Clicks that a filter makes something else of, and claps that are none. */
class ClickTest {
  private static final int DELAY = 700;
  private static final int REPEATS = 3;
  private static final double[] CLICK = StimulusKind.CLICK.of(0.5).render(Designs.RATE).toArray();
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  static Stream<Design> filters() {
    return Stream.of(
        new LowPass(2000, 2), BandPass.TELEPHONE, new Crossover(500, 4, Crossover.Output.LOW));
  }

  private static Reading reading(double[] back, SplittableRandom random) {
    double peak = Signal.of(Designs.RATE, back).peak();
    double[] noisy = back.clone();
    for (int i = 0; i < noisy.length; i++) {
      noisy[i] += 0.001 * peak * random.nextGaussian();
    }
    return new Reading(Signal.of(Designs.RATE, CLICK), Signal.of(Designs.RATE, noisy));
  }

  private static Reading through(Design filter, SplittableRandom random) {
    double[] late = new double[CLICK.length + 6000];
    System.arraycopy(CLICK, 0, late, DELAY, CLICK.length);
    return reading(filter.at(Designs.RATE).on(late), random);
  }

  /** A clap of 4 ms, louder than all else, anywhere within a tenth of a second after the click. */
  private static Reading clap(int at, SplittableRandom random) {
    double[] back = new double[CLICK.length + 6000];
    for (int i = 0; i < 400; i++) {
      back[at + i] = Math.exp(-i / 64.0) * random.nextGaussian();
    }
    return reading(back, random);
  }

  @ParameterizedTest
  @MethodSource("filters")
  void isKnownAgainAfterAFilterOnceItIsPlayedThreeTimes(Design filter) {
    SplittableRandom random = new SplittableRandom(17);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < REPEATS; i++) {
      readings.add(through(filter, random));
    }
    assertInstanceOf(Estimate.Refused.class, ESTIMATOR.estimate(readings.subList(0, 1)));
    Estimate.Found found = assertInstanceOf(Estimate.Found.class, ESTIMATOR.estimate(readings));
    PureDelay pure = found.measurement().pure().orElseThrow();
    assertEquals(DELAY, pure.samples(), pure.uncertaintySamples());
  }

  /** Even where three claps fall on the same moment, as no audience does, they are no path. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void isNotTakenFromClaps(boolean atOneMoment) {
    SplittableRandom random = new SplittableRandom(18);
    int numbers = 0;
    for (int trial = 0; trial < 100; trial++) {
      List<Reading> readings = new ArrayList<>();
      int moment = 500 + random.nextInt(4000);
      for (int i = 0; i < REPEATS; i++) {
        readings.add(clap(atOneMoment ? moment : 500 + random.nextInt(4000), random));
      }
      numbers += ESTIMATOR.estimate(readings) instanceof Estimate.Found ? 1 : 0;
    }
    assertEquals(0, numbers);
  }

  /** Ten deviations above noise that holds more in a click's length than the click. */
  @Test
  void isReadInLouderNoise() {
    SplittableRandom random = new SplittableRandom(19);
    double noise = Math.sqrt(Loudness.energy(CLICK)) / 10;
    for (int trial = 0; trial < 20; trial++) {
      double[] back = new double[CLICK.length + 6000];
      System.arraycopy(CLICK, 0, back, DELAY, CLICK.length);
      for (int i = 0; i < back.length; i++) {
        back[i] += noise * random.nextGaussian();
      }
      Reading reading = new Reading(Signal.of(Designs.RATE, CLICK), Signal.of(Designs.RATE, back));
      assertInstanceOf(Estimate.Found.class, ESTIMATOR.estimate(List.of(reading)));
    }
  }

  /** Of what few frequencies a filter lets through, a door that slams once makes as much. */
  @Test
  void isNotKnownFromItsBassAlone() {
    Reading once = through(BandPass.SUBWOOFER, new SplittableRandom(22));
    assertInstanceOf(Estimate.Refused.class, ESTIMATOR.estimate(List.of(once)));
  }

  /** A spike and a step that falls off, a few samples to 5 ms apart: the one event there is. */
  @Test
  void isNotTakenFromAPlugThatIsPulled() {
    SplittableRandom random = new SplittableRandom(20);
    int numbers = 0;
    for (int trial = 0; trial < 30; trial++) {
      double[] back = new double[CLICK.length + 6000];
      int at = 500 + random.nextInt(4000);
      for (int i = at; i < back.length; i++) {
        back[i] = Math.exp((at - i) / 400.0);
      }
      back[at + 10 + random.nextInt(240)] += random.nextGaussian();
      numbers +=
          ESTIMATOR.estimate(List.of(reading(back, random))) instanceof Estimate.Found ? 1 : 0;
    }
    assertEquals(0, numbers);
  }
}
