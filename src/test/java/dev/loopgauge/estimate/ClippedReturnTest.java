package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import dev.loopgauge.signal.filter.BandPass;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A clipped return is told whatever the stimulus, and refused only where it tells no delay. */
class ClippedReturnTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double DELAY = 100.37;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  private static Signal sound(String kind, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return DelayTrial.asConvertersPass(
        switch (kind) {
          case "speech" -> ShowSound.speech(RATE, 1, random);
          case "music" -> ShowSound.music(RATE, 1, random);
          case "click" -> StimulusKind.CLICK.of(0.25).render(RATE);
          case "mls" -> StimulusKind.MLS.of(0.5).render(RATE);
          default -> StimulusKind.SWEEP.of(0.5).render(RATE);
        });
  }

  private static Reading reading(Signal sound, double snrDb, long seed) {
    DelayTrial trial = new DelayTrial(sound);
    double gain = 0.9 / Arrays.stream(sound.toArray()).map(Math::abs).max().getAsDouble();
    return trial.reading(DELAY, gain, trial.noise(snrDb, gain), new SplittableRandom(seed));
  }

  /** A share of the samples cut off, the loudest, on both sides or on the upper one. */
  private static Reading clipped(Reading reading, double share, boolean both) {
    double[] samples = new double[reading.ret().length()];
    reading.ret().copyTo(0, samples, 0, samples.length);
    double[] sorted = Arrays.stream(samples).map(v -> both ? Math.abs(v) : v).sorted().toArray();
    int count = Math.max(1, (int) (share * reading.reference().length()));
    double high = sorted[sorted.length - count];
    double low = both ? -high : Double.NEGATIVE_INFINITY;
    double[] cut =
        Arrays.stream(samples)
            .map(v -> Math.rint(Math.max(low, Math.min(high, v)) * (1 << 23)) / (1 << 23))
            .toArray();
    return new Reading(reading.reference(), Signal.of(RATE, cut));
  }

  private static List<FindingCode> codes(Estimate estimate) {
    return estimate.findings().stream().map(Finding::code).toList();
  }

  private static Measurement measured(Estimate estimate) {
    return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
  }

  /** The delay lies within the stated uncertainty of that without clipping; or it is refused. */
  private static boolean isToldAndCovered(String kind, double share, boolean both, long seed) {
    Reading whole = reading(sound(kind, seed), 40, seed);
    Estimate estimate = ESTIMATOR.estimate(List.of(clipped(whole, share, both)));
    assertTrue(codes(estimate).contains(FindingCode.CLIPPED), estimate::toString);
    if (estimate instanceof Estimate.Refused) {
      return false;
    }
    Measurement here = measured(estimate);
    double before = measured(ESTIMATOR.estimate(List.of(whole))).delay().samples();
    assertEquals(before, here.delay().samples(), here.uncertaintySamples(), estimate::toString);
    assertEquals(DELAY, here.delay().samples(), 0.1, estimate::toString);
    return true;
  }

  @ParameterizedTest
  @CsvSource({
    "sweep, 0.002, true",
    "sweep, 0.1, true",
    "sweep, 0.05, false",
    "mls, 0.001, true",
    "mls, 0.05, true",
    "mls, 0.05, false",
    "speech, 0.01, true",
    "speech, 0.05, false",
    "music, 0.01, false"
  })
  void isToldAndItsUncertaintyCoversWhatItMoves(String kind, double share, boolean both) {
    assertTrue(isToldAndCovered(kind, share, both, 1));
  }

  @Tag("campaign")
  @ParameterizedTest
  @CsvSource({
    "sweep, 0.001",
    "sweep, 0.01",
    "sweep, 0.1",
    "mls, 0.002",
    "mls, 0.01",
    "mls, 0.02",
    "speech, 0.001",
    "speech, 0.002",
    "music, 0.001",
    "music, 0.002"
  })
  void isCoveredWithManySeedsAndSeldomRefused(String kind, double share) {
    int refused = 0;
    for (int seed = 2; seed < 12; seed++) {
      refused += isToldAndCovered(kind, share, seed % 2 == 0, seed) ? 0 : 1;
    }
    assertTrue(refused <= 2, refused + " of 10 refused");
  }

  @ParameterizedTest
  @CsvSource({"sweep, 0.6", "mls, 0.6", "speech, 0.6", "music, 0.6", "click, 0.0005"})
  void isRefusedWhereTooLittleIsLeft(String kind, double share) {
    Estimate estimate =
        ESTIMATOR.estimate(List.of(clipped(reading(sound(kind, 1), 40, 1), share, true)));
    assertInstanceOf(Estimate.Refused.class, estimate);
    assertTrue(codes(estimate).contains(FindingCode.CLIPPED), estimate::toString);
  }

  @ParameterizedTest
  @CsvSource({
    "sweep, 24",
    "sweep, 16",
    "mls, 24",
    "mls, 16",
    "speech, 16",
    "music, 16",
    "click, 16"
  })
  void isNotToldOfReturnThatIsNone(String kind, int bits) {
    double full = Math.pow(2, bits - 1);
    for (int seed = 1; seed < 4; seed++) {
      for (double level : new double[] {1, 0.01}) {
        Reading reading = reading(sound(kind, seed), 90, seed);
        double[] samples = new double[reading.ret().length()];
        reading.ret().copyTo(0, samples, 0, samples.length);
        Arrays.setAll(samples, i -> Math.rint(samples[i] * level * full) / full);
        Estimate estimate =
            ESTIMATOR.estimate(List.of(new Reading(reading.reference(), Signal.of(RATE, samples))));
        assertTrue(!codes(estimate).contains(FindingCode.CLIPPED), estimate::toString);
      }
    }
  }

  /** A digital loop returns the sequence's own two values. */
  @Test
  void isNotToldOfSequenceThatComesBackAsItIs() {
    Signal sequence = StimulusKind.MLS.of(0.5).render(RATE);
    Signal ret = sequence.times(0.5).slice(-64, sequence.length() + 1000);
    Estimate estimate = ESTIMATOR.estimate(List.of(new Reading(sequence, ret)));
    assertEquals(List.of(), codes(estimate));
  }

  @Test
  void coversWhatClippingBehindNarrowPathMoves() {
    Signal sweep = StimulusKind.SWEEP.of(1).render(RATE);
    double[] passed =
        BandPass.TELEPHONE.at(RATE).on(sweep.slice(-100, sweep.length() + 2000).toArray());
    Reading whole = new Reading(sweep, Signal.of(RATE, passed));
    Measurement before = measured(ESTIMATOR.estimate(List.of(whole)));
    Measurement here = measured(ESTIMATOR.estimate(List.of(clipped(whole, 0.2, true))));
    double moved = Math.abs(here.delay().samples() - before.delay().samples());
    assertTrue(moved < here.uncertaintySamples(), here::toString);
    assertTrue(here.uncertaintySamples() > before.uncertaintySamples(), here::toString);
  }

  @Test
  void lowersTheCertaintyOfTheLevel() {
    Reading whole = reading(sound("sweep", 1), 40, 1);
    Measurement here = measured(ESTIMATOR.estimate(List.of(clipped(whole, 0.1, true))));
    Measurement before = measured(ESTIMATOR.estimate(List.of(whole)));
    assertTrue(before.levelUncertaintyDb() < 0.01);
    assertEquals(before.levelDb(), here.levelDb(), here.levelUncertaintyDb());
  }
}
