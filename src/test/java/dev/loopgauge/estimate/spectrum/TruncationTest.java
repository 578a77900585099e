package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TruncationTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int LENGTH = 9600;
  private static final int DELAY = 400;

  private static Signal noise(int length, double level, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] samples = new double[length];
    for (int i = 0; i < length; i++) {
      samples[i] = level * random.nextGaussian();
    }
    return Signal.of(RATE, samples);
  }

  private static Signal plus(Signal one, Signal other) {
    double[] sum = new double[one.length()];
    for (int i = 0; i < sum.length; i++) {
      sum[i] = one.at(i) + other.at(i);
    }
    return Signal.of(RATE, sum);
  }

  /**
   * The truncation of a reference of which an arrival at half the level, {@link #DELAY} later, is
   * in a return.
   */
  private static Truncation edges(Signal reference, Signal ret) {
    return new Truncation(
        new Reading(reference, ret), new FittedArrival(DELAY, 0.5), reference.energy());
  }

  private static Signal halved(Signal signal, int from, int to) {
    double[] samples = new double[to - from];
    signal.copyTo(from, samples, 0, samples.length);
    for (int i = 0; i < samples.length; i++) {
      samples[i] /= 2;
    }
    return Signal.of(RATE, samples);
  }

  @Test
  void aStimulusAtFullLevelFromItsFirstToItsLastSampleIsNotCut() {
    Signal stimulus = noise(LENGTH, 1, 1);
    Truncation edges = edges(stimulus, halved(stimulus, -DELAY, 2 * LENGTH));
    assertFalse(edges.startCutsSound(0));
    assertFalse(edges.endCutsSound(LENGTH));
  }

  @Test
  void noiseAsLoudAsTheCopyIsNoSoundThatGoesOn() {
    Signal stimulus = noise(LENGTH, 1, 2);
    Signal ret = halved(stimulus, -DELAY, 2 * LENGTH);
    Truncation edges = edges(stimulus, plus(ret, noise(ret.length(), 0.5, 3)));
    assertFalse(edges.startCutsSound(0));
    assertFalse(edges.endCutsSound(LENGTH));
  }

  @Test
  void soundThatGoesOnInTheReturnIsCut() {
    Signal whole = noise(3 * LENGTH, 1, 4);
    Signal ret = halved(whole, LENGTH - DELAY, 3 * LENGTH);
    Truncation edges =
        edges(whole.slice(LENGTH, 2 * LENGTH), plus(ret, noise(ret.length(), 0.1, 5)));
    assertTrue(edges.startCutsSound(0));
    assertTrue(edges.endCutsSound(LENGTH));
  }

  @Test
  void whatTheReturnStoppedTooEarlyForIsCutWhereTheReferenceIsHeard() {
    Signal stimulus = noise(LENGTH, 1, 6);
    Signal ret = halved(stimulus, -DELAY, LENGTH - DELAY);
    assertTrue(edges(stimulus, ret).endCutsSound(LENGTH - DELAY));
    Signal endsBefore = stimulus.slice(0, LENGTH - DELAY).slice(0, LENGTH);
    assertFalse(edges(endsBefore, ret).endCutsSound(LENGTH - DELAY));
  }

  @Test
  void anEdgeInAPauseCutsNothing() {
    Signal pause = noise(LENGTH, 1, 7).slice(-2400, LENGTH);
    assertFalse(edges(pause, halved(pause, -DELAY, 2 * LENGTH)).startCutsSound(0));
  }

  @Test
  void whatThePathDoesNotPassAtTheEdgeIsNotSoundThatGoesOn() {
    Signal stimulus = noise(LENGTH, 1, 8);
    Signal hiss = noise(3 * LENGTH, 1e-4, 9);
    Truncation edges = edges(stimulus, hiss);
    assertFalse(edges.startCutsSound(0));
    assertFalse(edges.endCutsSound(LENGTH));
  }

  /** A pulse that starts with the recording, and a path that lets it rise before its peak. */
  @Test
  void whatAFilterSpreadsBeforeAPulseIsNoSoundThatGoesOn() {
    double[] sent = new double[LENGTH];
    sent[0] = 1;
    double[] back = new double[2 * LENGTH];
    for (int i = 0; i < 40; i++) {
      back[DELAY - 30 + i] = 0.5 * Math.sin(Math.PI * i / 40);
    }
    assertFalse(edges(Signal.of(RATE, sent), Signal.of(RATE, back)).startCutsSound(0));
  }
}
