package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Zeros are lost sound where no rounding makes them of sound that is due. */
class ZeroRunsTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int LENGTH = 24_000;
  private static final int FROM = 9_000;

  private static double[] noise() {
    SplittableRandom random = new SplittableRandom(3);
    double[] noise = new double[LENGTH];
    Arrays.setAll(noise, i -> random.nextGaussian());
    return noise;
  }

  /** A return in steps of 1, its reference of the same samples. */
  private static List<LostSound.Gap> runs(double[] sent, double steps, int zeros) {
    double[] ret = new double[LENGTH];
    Arrays.setAll(ret, i -> i >= FROM && i < FROM + zeros ? 0 : Math.rint(steps * sent[i]));
    Reading reading = new Reading(Signal.of(RATE, sent), Signal.of(RATE, ret));
    FittedArrival arrival = Spectra.of(List.of(reading), 0.01).strongest();
    return ZeroRuns.of(reading, arrival);
  }

  /** In noise every other sample is a half wave, which 1,000 steps make e^7 to 1. */
  @ParameterizedTest
  @CsvSource({"3, 0", "48, 1", "480, 1"})
  void zerosInLoudNoiseAreLostFromAFewOn(int zeros, int told) {
    List<LostSound.Gap> runs = runs(noise(), 1000, zeros);
    assertEquals(told, runs.size());
    assertEquals(told * zeros, runs.stream().mapToInt(LostSound.Gap::length).sum());
  }

  /** Noise of less than half a step is zero most of the time. */
  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.5, 1})
  void roundingMakesZerosOfFaintNoise(double steps) {
    assertEquals(List.of(), runs(noise(), steps, 0));
  }

  /** A slow wave of a few steps stays within half a step of zero for some milliseconds. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 3, 30})
  void aWavePassesZeroSlowly(double steps) {
    double[] wave = new double[LENGTH];
    Arrays.setAll(wave, i -> Math.sin(2 * Math.PI * 20 * i / RATE.hertz()));
    assertEquals(List.of(), runs(wave, steps, 0));
  }

  /** What a decay leaves is rounded to zeros now and then before it is gone. */
  @ParameterizedTest
  @ValueSource(ints = {500, 2000, 8000})
  void aDecayIsNotLost(int decay) {
    double[] sent = noise();
    for (int i = 0; i < LENGTH; i++) {
      sent[i] *= Math.exp(-(double) (i % 12_000) / decay);
    }
    assertEquals(List.of(), runs(sent, 20, 0));
  }
}
