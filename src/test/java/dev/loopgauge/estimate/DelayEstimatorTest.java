package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class DelayEstimatorTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.5);

  private static DelayTrial trial(StimulusKind kind) {
    return new DelayTrial(kind.of(1).render(RATE));
  }

  private static Measurement measured(Estimate estimate) {
    return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
  }

  private static FindingCode refusal(Estimate estimate) {
    return assertInstanceOf(Estimate.Refused.class, estimate).findings().stream()
        .filter(Finding::refuses)
        .findFirst()
        .orElseThrow()
        .code();
  }

  @ParameterizedTest
  @EnumSource(StimulusKind.class)
  void findsDelayFarBelowOneSample(StimulusKind kind) {
    DelayTrial trial = trial(kind);
    double noise = trial.noise(20, 1);
    Reading reading = trial.reading(595.37, 1, noise, new SplittableRandom(1));
    Measurement m = measured(ESTIMATOR.estimate(List.of(reading)));
    assertEquals(595.37, m.delay().samples(), 5 * trial.bound(noise, 1), kind.label());
    assertEquals(20, m.signalToNoiseDb(), 0.3, kind.label());
    assertEquals(0, m.levelDb(), 0.1, kind.label());
    assertEquals(Polarity.NORMAL, m.polarity());
  }

  /**
   * A path that was fitted to drums rings on a little where they are silent: no level moves there.
   * A filter that delays low sounds more than high ones makes one sweep look like a drift.
   */
  @ParameterizedTest
  @CsvSource({
    "DRUMS, 60, 777052", "DRUMS, 60, 777064", "SWEEP, 10, 777119",
    "SWEEP, 10, 777191", "SWEEP, 10, 777223", "SWEEP, 10, 777239",
  })
  void tellsNothingOfAFilter(OneDelayTrial.Stimulus stimulus, double noiseDb, long seed) {
    OneDelayTrial trial =
        new OneDelayTrial(OneDelayTrial.Change.NOTHING, 0, stimulus, noiseDb, seed);
    assertEquals(OneDelayTrial.Outcome.QUIET, trial.read().outcome());
  }

  /** Parts of 20 s through a high-pass, whose correlations peak apart though all tell one delay. */
  @ParameterizedTest
  @CsvSource({"SPEECH, 20, 695522964876044707", "MUSIC, 60, 695522964876045628"})
  void takesPartsThatTellOneDelayForOneGroup(
      OneDelayTrial.Stimulus stimulus, double noiseDb, long seed) {
    OneDelayTrial trial =
        new OneDelayTrial(OneDelayTrial.Change.NOTHING, 0, stimulus, noiseDb, seed);
    OneDelayTrial.Told told = trial.readExcerpt();
    assertEquals("QUIET", told.outcome() + told.codes());
  }

  /** Both with the arrival's end just where the return ends, and beyond it. */
  @ParameterizedTest
  @CsvSource({"40000, 0", "40000, -2400", "40000, 100", "47000, 0"})
  void readsReturnThatEndsBeforeItsReference(int length, int delay) {
    SplittableRandom random = new SplittableRandom(1);
    double[] noise = new double[RATE.hertz()];
    Arrays.setAll(noise, i -> 0.1 * random.nextGaussian());
    Signal reference = Signal.of(RATE, noise);
    double[] ret = reference.slice(-delay, length - delay).toArray();
    Arrays.setAll(ret, i -> ret[i] + 1e-3 * random.nextGaussian());
    Reading reading = new Reading(reference, Signal.of(RATE, ret));
    assertEquals(delay, measured(ESTIMATOR.estimate(List.of(reading))).delay().samples(), 1e-3);
  }

  @Test
  void findsReturnThatLeadsItsReference() {
    DelayTrial trial = trial(StimulusKind.SWEEP);
    Reading later = trial.reading(300.25, 0.5, 1e-4, new SplittableRandom(2));
    Reading swapped = new Reading(later.ret(), later.reference());
    Measurement m = measured(ESTIMATOR.estimate(List.of(swapped)));
    assertEquals(-300.25, m.delay().samples(), 1e-3);
    assertEquals(6.02, m.levelDb(), 0.05);
  }

  @Test
  void saysThatReturnIsInverted() {
    Reading reading = trial(StimulusKind.SWEEP).reading(12.5, -0.25, 1e-4, new SplittableRandom(3));
    Estimate estimate = ESTIMATOR.estimate(List.of(reading));
    assertEquals(Polarity.INVERTED, measured(estimate).polarity());
    assertEquals(-12.04, measured(estimate).levelDb(), 0.05);
    assertEquals(FindingCode.INVERTED, estimate.findings().get(0).code());
  }

  @Test
  void severalReadingsAreSurerThanOne() {
    DelayTrial trial = trial(StimulusKind.SWEEP);
    SplittableRandom random = new SplittableRandom(4);
    double noise = trial.noise(0, 1);
    List<Reading> four =
        List.of(
            trial.reading(50.5, 1, noise, random),
            trial.reading(50.5, 1, noise, random),
            trial.reading(50.5, 1, noise, random),
            trial.reading(50.5, 1, noise, random));
    double one = measured(ESTIMATOR.estimate(four.subList(0, 1))).uncertaintySamples();
    Measurement all = measured(ESTIMATOR.estimate(four));
    assertEquals(0.5, all.uncertaintySamples() / one, 0.05);
    assertEquals(4, all.repeats());
  }

  @Test
  void refusesSilenceOnEitherSide() {
    Signal sweep = StimulusKind.SWEEP.of(1).render(RATE);
    Signal silence = Signal.silence(RATE, 48_000);
    assertEquals(
        FindingCode.NO_RETURN, refusal(ESTIMATOR.estimate(List.of(new Reading(sweep, silence)))));
    assertEquals(
        FindingCode.NO_REFERENCE,
        refusal(ESTIMATOR.estimate(List.of(new Reading(silence, sweep)))));
  }

  @Tag("campaign")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void refusesNoise(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Signal noise = Signal.of(RATE, random.doubles(96_000, -0.1, 0.1).toArray());
    for (StimulusKind kind : StimulusKind.values()) {
      Reading reading = new Reading(kind.of(1).render(RATE), noise);
      assertEquals(
          FindingCode.NO_RETURN,
          refusal(ESTIMATOR.estimate(List.of(reading))),
          kind.label() + ", seed " + seed);
    }
  }

  @Test
  void refusesHum() {
    double[] hum = new double[96_000];
    for (int i = 0; i < hum.length; i++) {
      hum[i] = 0.3 * Math.sin(2 * Math.PI * 50 * i / 48_000) + 0.1 * Math.sin(i * 0.0196);
    }
    Reading reading = new Reading(StimulusKind.SWEEP.of(1).render(RATE), Signal.of(RATE, hum));
    assertEquals(FindingCode.NO_RETURN, refusal(ESTIMATOR.estimate(List.of(reading))));
  }

  @Test
  void refusesSteadyToneAsReference() {
    double[] tone = new double[240_000];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = 0.3 * Math.sin(2 * Math.PI * 440 * i / 48_000);
    }
    Signal signal = Signal.of(RATE, tone);
    Reading reading = new Reading(signal, signal.slice(-100, 240_000));
    assertTrue(
        List.of(FindingCode.NO_RETURN, FindingCode.WEAK_RETURN, FindingCode.NO_REFERENCE)
            .contains(refusal(ESTIMATOR.estimate(List.of(reading)))));
  }

  @Test
  void saysThatReturnIsClipped() {
    Reading reading = trial(StimulusKind.SWEEP).reading(100, 1, 1e-5, new SplittableRandom(5));
    double[] clipped = new double[reading.ret().length()];
    reading.ret().copyTo(0, clipped, 0, clipped.length);
    for (int i = 0; i < clipped.length; i++) {
      clipped[i] = Math.max(-0.5, Math.min(0.5, clipped[i]));
    }
    Reading driven = new Reading(reading.reference(), Signal.of(RATE, clipped));
    assertEquals(FindingCode.CLIPPED, refusal(ESTIMATOR.estimate(List.of(driven))));
  }
}
