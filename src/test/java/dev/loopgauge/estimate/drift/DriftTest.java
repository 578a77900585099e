package dev.loopgauge.estimate.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.DelayTrial;
import dev.loopgauge.estimate.Rig;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Resampled;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Clocks that drift apart are told, from repeats and from within one short recording. */
@Tag("campaign")
class DriftTest {
  private static final int DELAY = 600;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.5);

  /** Some signal, later by a delay that grows by some ppm of the time sent, in a little noise. */
  private static Signal drifting(Signal sent, double ppm) {
    Signal late = sent.slice(-DELAY, sent.length() + sent.rate().hertz());
    Samples drifting = new Resampled(late, 0, -ppm / (1e6 + ppm));
    double[] ret = new double[late.length()];
    drifting.copyTo(0, ret, 0, ret.length);
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < ret.length; i++) {
      ret[i] = 0.5 * ret[i] + 1e-4 * random.nextGaussian();
    }
    return Signal.of(sent.rate(), ret);
  }

  /** Sweeps of one second, each after half a second of silence. */
  private static Signal sweeps(int count) {
    int period = Rig.RATE.hertz() * 3 / 2;
    double[] sent = new double[count * period];
    for (int i = 0; i < count; i++) {
      Rig.SWEEP.copyTo(0, sent, i * period, Rig.SWEEP.length());
    }
    return Signal.of(Rig.RATE, sent);
  }

  /** Checks the drift, and the delay of what was sent at {@code middle}. */
  private static void assertDrift(double ppm, double middle, Estimate estimate) {
    assertEquals(
        List.of(FindingCode.CLOCKS_NOT_LOCKED),
        estimate.findings().stream().map(Finding::code).toList(),
        estimate::toString);
    Measurement m = assertInstanceOf(Estimate.Found.class, estimate).measurement();
    assertEquals(ppm, m.clockDriftPpm().orElseThrow(), 0.05);
    assertEquals(DELAY + ppm * 1e-6 * (middle + DELAY), m.delay().samples(), 0.1);
    String shown = ppm > 0 ? "falls behind by %.1f ppm" : "runs ahead by %.1f ppm";
    String text = estimate.findings().get(0).text();
    assertTrue(text.contains(shown.formatted(Math.abs(ppm))), text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {3, -50, 300, 999, -999})
  void tellsDriftWithinOneRecordingOfSweeps(double ppm) {
    Signal sent = sweeps(5);
    Estimate estimate = ESTIMATOR.estimate(sent, drifting(sent, ppm));
    double middle = sent.length() / 2.0;
    assertDrift(ppm, middle, estimate);
    Measurement m = ((Estimate.Found) estimate).measurement();
    assertTrue(m.uncertaintySamples() > Math.abs(ppm) * 1e-6 * middle, m::toString);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-20, 100, 999})
  void tellsDriftWithinOneRecordingOfMusic(double ppm) {
    Signal sent = ShowSound.music(Rig.RATE, 6, new SplittableRandom(3));
    assertDrift(ppm, sent.length() / 2.0, ESTIMATOR.estimate(sent, drifting(sent, ppm)));
  }

  /** Each repeat is smeared by the drift, so that by themselves they lie off a line. */
  @ParameterizedTest
  @ValueSource(doubles = {-999, 300, 999})
  void tellsDriftThatSmearsEachRepeat(double ppm) {
    Signal sent = sweeps(3);
    Signal ret = drifting(sent, ppm);
    int period = sent.length() / 3;
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      readings.add(
          new Reading(Rig.SWEEP, ret.slice(i * period, (i + 1) * period + 20_000), i * period));
    }
    assertDrift(ppm, period + Rig.SWEEP.length() / 2.0, ESTIMATOR.estimate(readings));
  }

  /** A sample is a step; a converter that starts anew moves each repeat by a part of one. */
  @ParameterizedTest
  @CsvSource({"300, 300, 301, 1", "301, 300, 300, 1", "300.1, 300.9, 300.5, 0"})
  void tellsAStepOfOneSampleFromRepeatsWithinOne(double one, double two, double three, int told) {
    DelayTrial trial = new DelayTrial(Rig.SWEEP);
    SplittableRandom random = new SplittableRandom(5);
    List<Reading> readings = new ArrayList<>();
    for (double delay : new double[] {one, two, three}) {
      Reading reading = trial.reading(delay, 0.5, trial.noise(40, 0.5), random);
      int start = readings.size() * Rig.RATE.hertz() * 3 / 2;
      readings.add(new Reading(reading.reference(), reading.ret(), start));
    }
    Estimate estimate = ESTIMATOR.estimate(readings);
    assertEquals(told, estimate.findings().size(), estimate::toString);
    assertTrue(estimate.findings().stream().allMatch(f -> f.code() == FindingCode.DROPOUT));
  }

  /** In one sweep each moment is one frequency: a path that delays the bass is no drift. */
  @ParameterizedTest
  @ValueSource(ints = {48, 480, 1500})
  void aSweepThroughAPathThatDelaysTheBassShowsNoDrift(int later) {
    Signal sweep = ExponentialSweep.fullBand(5).render(Rig.RATE);
    double[] ret = new double[sweep.length() + Rig.RATE.hertz()];
    double share = 1 - Math.exp(-2 * Math.PI * 100 / Rig.RATE.hertz());
    double low = 0;
    for (int i = 0; i < sweep.length(); i++) {
      low += share * (sweep.at(i) - low);
      ret[i + DELAY] += sweep.at(i) - low;
      ret[i + DELAY + later] += low;
    }
    Estimate estimate = ESTIMATOR.estimate(sweep, Signal.of(Rig.RATE, ret));
    assertTrue(
        estimate.findings().stream().noneMatch(f -> f.code() == FindingCode.CLOCKS_NOT_LOCKED),
        estimate::toString);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-4, 0.02, 0.1})
  void aSteadyPathInNoiseShowsNoDrift(double noise) {
    for (long seed = 0; seed < 10; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      Signal sent = ShowSound.speech(Rig.RATE, 4, random);
      double[] ret = sent.slice(-DELAY, sent.length() + 9600).toArray();
      for (int i = 0; i < ret.length; i++) {
        ret[i] += noise * random.nextGaussian();
      }
      Estimate estimate = ESTIMATOR.estimate(sent, Signal.of(Rig.RATE, ret));
      assertEquals(List.of(), estimate.findings(), "seed " + seed);
    }
  }

  /** Sizes of causes: common practice, no source. 1000 / 1001 is 999 ppm. */
  @ParameterizedTest
  @CsvSource({
    "12, let one lead",
    "-80, let one lead",
    "400, no two good clocks",
    "999, pull-down",
    "-999, pull-down",
    "88435, check the sample rate of each device"
  })
  void namesTheLikelyCauseByItsSize(double ppm, String cause) {
    assertTrue(
        DriftFindings.drifting(new ClockDrift(ppm, 0.1)).hint().contains(cause),
        DriftFindings.drifting(new ClockDrift(ppm, 0.1))::hint);
  }

  @Test
  void givesTheDriftInMillisecondsAnHour() {
    assertEquals(
        "the clocks are not locked: the return falls behind by 50.0 ppm (± 0.3 ppm), 180 ms an hour",
        DriftFindings.drifting(new ClockDrift(50, 0.2201)).text());
    assertEquals(
        "the clocks are not locked: the return falls behind by 999 ppm (± 15 ppm), 3596 ms an hour",
        DriftFindings.drifting(new ClockDrift(999, 14.1)).text());
  }

  @Test
  void noUncertaintyIsPrintedBelowTheLeastDriftThatIsTold() {
    assertEquals(
        "the clocks are not locked: the return runs ahead by 20.0 ppm (± 0.2 ppm), 72.0 ms an hour",
        DriftFindings.drifting(new ClockDrift(-20.0001, 0.000091)).text());
  }
}
