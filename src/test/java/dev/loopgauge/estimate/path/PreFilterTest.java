package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.AdversarialReturnsTest;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Trap;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Paths that pass a handful of frequencies, as that to a subwoofer does. */
@Tag("campaign")
class PreFilterTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double DELAY = 523.25;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  /** What a crossover makes of a bin, as real and imaginary part. */
  private interface Crossover {
    double[] at(double overCrossover);
  }

  /** Two Butterworth filters of second order in a row, as in a crossover of fourth order. */
  private static double[] fourthOrder(double f) {
    double re = 1 - f * f;
    double im = Math.sqrt(2) * f;
    double power = re * re + im * im;
    double real = re / power;
    double imaginary = -im / power;
    return new double[] {real * real - imaginary * imaginary, 2 * real * imaginary};
  }

  /** The same without its delay. */
  private static double[] magnitudeOfIt(double f) {
    return new double[] {1 / (1 + f * f * f * f), 0};
  }

  private static Reading through(
      Signal sent, Crossover crossover, double hertz, double noiseDb, long seed) {
    RealFft fft = new RealFft(RealFft.lengthFor(2 * sent.length()));
    double[] samples = new double[fft.length()];
    sent.copyTo(0, samples, 0, sent.length());
    fft.forward(samples);
    for (int k = 1; k < samples.length / 2; k++) {
      double[] passed = crossover.at((double) k * RATE.hertz() / samples.length / hertz);
      double re = samples[2 * k];
      samples[2 * k] = re * passed[0] - samples[2 * k + 1] * passed[1];
      samples[2 * k + 1] = re * passed[1] + samples[2 * k + 1] * passed[0];
    }
    Packed.fractionalDelay(samples, -DELAY);
    fft.inverse(samples);
    double[] ret = Arrays.copyOf(samples, sent.length());
    double rms = Signal.of(RATE, ret).rms();
    SplittableRandom random = new SplittableRandom(1000 + seed);
    for (int i = 0; i < ret.length; i++) {
      ret[i] += rms * Math.pow(10, noiseDb / 20) * random.nextGaussian();
    }
    return new Reading(sent, Signal.of(RATE, ret));
  }

  private static Signal sweep(double seconds) {
    int length = RATE.samplesIn(seconds);
    int side = RATE.samplesIn(0.25);
    return ExponentialSweep.fullBand(seconds).render(RATE).slice(-side, length + side);
  }

  private static Signal noise(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] samples = new double[2 * RATE.hertz()];
    for (int i = RATE.samplesIn(0.25); i < samples.length - RATE.samplesIn(0.25); i++) {
      samples[i] = 0.1 * random.nextGaussian();
    }
    return Signal.of(RATE, samples);
  }

  private static Measurement measured(Reading reading) {
    Estimate estimate = ESTIMATOR.estimate(List.of(reading));
    Estimate.Found found = assertInstanceOf(Estimate.Found.class, estimate, estimate::toString);
    assertEquals(List.of(), found.findings());
    return found.measurement();
  }

  @ParameterizedTest
  @CsvSource({"1, 100, -30", "1, 200, -20", "2, 80, -30", "5, 60, -40"})
  void sweepThroughNarrowPathIsMeasured(double seconds, double hertz, double noiseDb) {
    Signal sweep = sweep(seconds);
    for (int seed = 0; seed < 5; seed++) {
      Reading reading = through(sweep, PreFilterTest::magnitudeOfIt, hertz, noiseDb, seed);
      Measurement m = measured(reading);
      assertEquals(DELAY, m.delay().samples(), m.uncertaintySamples(), "seed " + seed);
      assertTrue(m.uncertaintySamples() < RATE.samplesIn(0.0001), m::toString);
    }
  }

  @Test
  void noiseThroughNarrowPathIsMeasuredWithinItsUncertainty() {
    for (int seed = 0; seed < 20; seed++) {
      Reading reading = through(noise(seed), PreFilterTest::magnitudeOfIt, 70, -15, seed);
      Measurement m = measured(reading);
      assertEquals(DELAY, m.delay().samples(), m.uncertaintySamples(), "seed " + seed);
    }
  }

  /**
   * A filter of second order delays low frequencies by sqrt(2) / w0, two of them by twice that
   * (derived from its phase), those near the crossover by up to a third more, those above by less:
   * its response is strongest within a quarter of that.
   */
  @ParameterizedTest
  @ValueSource(doubles = {80, 120})
  void crossoverOfFourthOrderIsPartOfTheDelay(double hertz) {
    double low = 2 * Math.sqrt(2) / (2 * Math.PI * hertz) * RATE.hertz();
    Reading reading = through(sweep(2), PreFilterTest::fourthOrder, hertz, -30, 1);
    Estimate estimate = ESTIMATOR.estimate(List.of(reading));
    Estimate.Found found = assertInstanceOf(Estimate.Found.class, estimate, estimate::toString);
    assertEquals(
        List.of(FindingCode.DISPERSIVE), found.findings().stream().map(Finding::code).toList());
    Measurement m = found.measurement();
    double crossover = m.delay().samples() - DELAY;
    assertTrue(Math.abs(crossover - low) < low / 4, crossover + " samples");
  }

  @Test
  void levelIsThatOfWhatIsPassed() {
    Reading reading = through(sweep(2), PreFilterTest::magnitudeOfIt, 80, -30, 1);
    Reading quieter = new Reading(reading.reference(), ((Signal) reading.ret()).times(0.5));
    assertEquals(-6, measured(quieter).levelDb(), 0.5);
  }

  /** A slower sweep and a filter make something like a faster one: as it stands it isn't. */
  @ParameterizedTest
  @ValueSource(longs = {1, 49, 70, 389, 499, 662, 1143, 1336})
  void anotherSweepIsNoCopy(long seed) {
    assertEquals(Optional.empty(), AdversarialReturnsTest.falseNumber(Trap.WRONG_STIMULUS, seed));
  }

  /** Hum in both is explained as well as an arrival would be, but repeats itself. */
  @ParameterizedTest
  @ValueSource(longs = {100, 208, 334, 347, 351, 503, 598})
  void humInBothIsNoCopy(long seed) {
    assertEquals(Optional.empty(), AdversarialReturnsTest.falseNumber(Trap.SAME_HUM_IN_BOTH, seed));
  }
}
