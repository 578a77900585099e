package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import java.util.SplittableRandom;

/**
 * Some seconds of a programme: syllables, or plucked notes with a drum, or one time in ten nothing.
 * Syllables are pulses or hiss through resonances, notes are resonances that were struck. (Common
 * practice, no source; what they are for, a delay that can be measured, is tested.)
 */
final class Phrase {
  private static final double SHORTEST_SECONDS = 2.5;
  private static final double LONGEST_SECONDS = 5.5;
  private static final double QUIETEST_PEAK_DBFS = -16;
  private static final double LOUDEST_PEAK_DBFS = -8;

  /** The phrase has this many parts, and the last is faded out. */
  private static final int FADE = 10;

  private static final int HARMONICS = 8;

  private final SampleRate rate;
  private final SplittableRandom random;
  private final double[] sound;

  /**
   * A phrase.
   *
   * @param random the one source of chance for it
   */
  Phrase(SampleRate rate, SplittableRandom random) {
    this.rate = rate;
    this.random = random;
    this.sound = new double[rate.samplesIn(between(SHORTEST_SECONDS, LONGEST_SECONDS))];
  }

  /** Its sound; to be asked for once. */
  double[] render() {
    int kind = random.nextInt(10);
    if (kind < 5) {
      speak();
    } else if (kind < 9) {
      play();
    }
    level();
    return sound;
  }

  private void speak() {
    int at = 0;
    while (at < sound.length) {
      int length = rate.samplesIn(between(0.06, 0.25));
      strike(at, random.nextInt(4) == 0 ? hiss(length) : pulses(length), 3, 0.1);
      boolean wordEnds = random.nextInt(4) == 0;
      at += length + rate.samplesIn(wordEnds ? between(0.1, 0.4) : between(0, 0.04));
    }
  }

  /** Air pressed through something at a pitch that wavers, with a breath of noise. */
  private double[] pulses(int length) {
    double[] source = hiss(length);
    double period = rate.hertz() / between(90, 220);
    for (double at = 0; at < length; at += period) {
      source[(int) at] += 4;
      period *= between(0.98, 1.02);
    }
    return source;
  }

  private double[] hiss(int length) {
    double[] noise = new double[length];
    for (int i = 0; i < length; i++) {
      noise[i] = 0.3 * random.nextGaussian();
    }
    return noise;
  }

  private void play() {
    int beat = rate.samplesIn(between(0.11, 0.19));
    for (int at = 0; at < sound.length; at += beat) {
      if (random.nextInt(3) == 0) {
        strike(at, hiss(rate.samplesIn(0.04)), 2, 0.5);
      }
      note(at, between(110, 700));
    }
  }

  private void note(int from, double hertz) {
    double[] pluck = new double[rate.samplesIn(between(0.15, 0.45))];
    pluck[0] = 20;
    for (int harmonic = 1; harmonic <= HARMONICS; harmonic++) {
      resonate(from, pluck, harmonic * hertz, 2 + harmonic, 1.0 / harmonic);
    }
  }

  /** A source through that many resonances at random, as wide as a share of their frequencies. */
  private void strike(int from, double[] source, int resonances, double width) {
    for (int i = 0; i < resonances; i++) {
      double hertz = 250 * Math.pow(2, between(0, 5));
      resonate(from, source, hertz, width * hertz, 1);
    }
  }

  /** Adds what a resonance of second order makes of a source; its end is faded out. */
  private void resonate(int from, double[] source, double hertz, double widthHz, double gain) {
    double radius = Math.exp(-Math.PI * widthHz / rate.hertz());
    double turn = 2 * radius * Math.cos(2 * Math.PI * hertz / rate.hertz());
    double before = 0;
    double beforeThat = 0;
    int end = hertz < 0.45 * rate.hertz() ? Math.min(source.length, sound.length - from) : 0;
    double back = radius * radius;
    double fadePerSample = FADE * gain * (1 - radius) / Math.max(1, end);
    for (int i = 0; i < end; i++) {
      double now = source[i] + turn * before - back * beforeThat;
      beforeThat = before;
      before = now;
      sound[from + i] += Math.min(gain * (1 - radius), fadePerSample * (end - i)) * now;
    }
  }

  private void level() {
    double peak = 0;
    for (double sample : sound) {
      peak = Math.max(peak, Math.abs(sample));
    }
    double wanted = Decibels.toFactor(between(QUIETEST_PEAK_DBFS, LOUDEST_PEAK_DBFS));
    for (int i = 0; peak > 0 && i < sound.length; i++) {
      sound[i] *= wanted / peak;
    }
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
