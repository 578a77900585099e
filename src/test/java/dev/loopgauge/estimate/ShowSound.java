package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;

/** Sounds like those of a show, made from a seed: no two seeds sound alike. */
public final class ShowSound {
  private static final double[][] VOWELS = {
    {730, 1090, 2440}, {270, 2290, 3010}, {300, 870, 2240}, {530, 1840, 2480}, {570, 840, 2410}
  };
  private static final int[] SCALE = {0, 2, 4, 5, 7, 9, 11, 12};

  private final SampleRate rate;
  private final SplittableRandom random;
  private final double[] samples;

  private ShowSound(SampleRate rate, double seconds, SplittableRandom random) {
    this.rate = rate;
    this.random = random;
    this.samples = new double[rate.samplesIn(seconds)];
  }

  /**
   * Syllables: pulses or hiss through three resonances. The vowels are G. E. Peterson's and H. L.
   * Barney's averages for men, JASA 24(2), 1952, from memory.
   */
  public static Signal speech(SampleRate rate, double seconds, SplittableRandom random) {
    ShowSound programme = new ShowSound(rate, seconds, random);
    int at = 0;
    while (at < programme.samples.length) {
      int length = rate.samplesIn(0.05 + 0.15 * random.nextDouble());
      if (random.nextInt(4) == 0) {
        programme.hiss(at, length / 2);
      } else {
        programme.vowel(at, length);
      }
      at += length + rate.samplesIn(0.03 * random.nextDouble());
    }
    return programme.signal();
  }

  /** Notes of a C major scale with harmonics that die away, several at a time, and drum beats. */
  public static Signal music(SampleRate rate, double seconds, SplittableRandom random) {
    ShowSound programme = new ShowSound(rate, seconds, random);
    int beat = rate.samplesIn(0.08 + 0.06 * random.nextDouble());
    for (int at = 0; at < programme.samples.length; at += beat) {
      if (random.nextInt(3) == 0) {
        programme.drum(at, rate.samplesIn(0.05));
      }
      int key = SCALE[random.nextInt(SCALE.length)] + 12 * random.nextInt(3);
      programme.note(at, rate.samplesIn(0.4), 130.8 * Math.pow(2, key / 12.0));
    }
    return programme.signal();
  }

  /** Three drum samples of a kit: low, middle and high. */
  public static List<Signal> drumKit(SampleRate rate, SplittableRandom random) {
    return List.of(
        drumSample(rate, 50 + 40 * random.nextDouble(), 0.1, random),
        drumSample(rate, 200 + 200 * random.nextDouble(), 0.7, random),
        drumSample(rate, 0, 1, random));
  }

  /** A falling tone and noise that die away. */
  private static Signal drumSample(
      SampleRate rate, double hertz, double noise, SplittableRandom random) {
    double[] samples = new double[rate.samplesIn(0.05 + 0.2 * random.nextDouble())];
    for (int i = 0; i < samples.length; i++) {
      double past = (double) i / samples.length;
      double tone = Math.sin(2 * Math.PI * hertz * i / rate.hertz() * (1 + Math.exp(-20 * past)));
      samples[i] = 0.5 * Math.exp(-6 * past) * (tone + noise * random.nextGaussian());
    }
    return Signal.of(rate, samples);
  }

  /** The samples of a kit on some sixteenths of a bar, each as it is, at its own loudness. */
  public static Signal pattern(List<Signal> kit, double seconds, SplittableRandom random) {
    ShowSound programme = new ShowSound(kit.get(0).rate(), seconds, random);
    double step = 60.0 / (90 + 60 * random.nextDouble()) / 4;
    for (double at = step * random.nextDouble(); at < seconds; at += step) {
      for (Signal sample : kit) {
        if (random.nextInt(4) == 0) {
          programme.sample(programme.rate.samplesIn(at), sample, 0.5 + 0.5 * random.nextDouble());
        }
      }
    }
    return programme.signal();
  }

  private void sample(int from, Signal sample, double gain) {
    for (int i = 0; i < sample.length(); i++) {
      add(from + i, gain * sample.at(i));
    }
  }

  /** Many single claps. */
  public static Signal applause(SampleRate rate, double seconds, SplittableRandom random) {
    ShowSound programme = new ShowSound(rate, seconds, random);
    int claps = (int) (200 * seconds);
    for (int i = 0; i < claps; i++) {
      programme.drum(random.nextInt(programme.samples.length), rate.samplesIn(0.004));
    }
    return programme.signal();
  }

  private void vowel(int from, int length) {
    double[] formants = VOWELS[random.nextInt(VOWELS.length)];
    double pitch = 90 + 130 * random.nextDouble();
    double[] pulses = new double[length];
    for (double at = 0; at < length; at += rate.hertz() / pitch) {
      pulses[(int) at] = 1;
      pitch *= 0.98 + 0.04 * random.nextDouble();
    }
    for (double formant : formants) {
      resonate(pulses, formant, 80 + 0.04 * formant, from);
    }
  }

  private void hiss(int from, int length) {
    double[] noise = new double[length];
    for (int i = 0; i < length; i++) {
      noise[i] = 0.2 * random.nextGaussian();
    }
    resonate(noise, 2500 + 1000 * random.nextDouble(), 1500, from);
  }

  /** Adds what a resonance of second order makes of a source. */
  private void resonate(double[] source, double hz, double widthHz, int from) {
    double radius = Math.exp(-Math.PI * widthHz / rate.hertz());
    double turn = 2 * radius * Math.cos(2 * Math.PI * hz / rate.hertz());
    double before = 0;
    double beforeThat = 0;
    for (int i = 0; i < source.length; i++) {
      double y = (1 - radius) * source[i] + turn * before - radius * radius * beforeThat;
      beforeThat = before;
      before = y;
      add(from + i, y * Math.min(1, 20.0 * (source.length - i) / source.length));
    }
  }

  private void note(int from, int length, double hz) {
    double phase = 2 * Math.PI * random.nextDouble();
    for (int harmonic = 1; harmonic <= 12 && harmonic * hz < 0.45 * rate.hertz(); harmonic++) {
      double step = 2 * Math.PI * harmonic * hz / rate.hertz();
      double fade = 5.0 * (1 + 0.3 * harmonic) / length;
      for (int i = 0; i < length; i++) {
        add(from + i, 0.1 / harmonic * Math.exp(-fade * i) * Math.sin(harmonic * phase + step * i));
      }
    }
  }

  private void drum(int from, int length) {
    for (int i = 0; i < length; i++) {
      add(from + i, 0.15 * Math.exp(-6.0 * i / length) * random.nextGaussian());
    }
  }

  private void add(int at, double sample) {
    if (at < samples.length) {
      samples[at] += sample;
    }
  }

  private Signal signal() {
    return Signal.of(rate, samples);
  }
}
