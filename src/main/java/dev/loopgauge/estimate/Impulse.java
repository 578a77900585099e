package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.Arrays;

/**
 * A reference that is one short click says little by itself: a clap, a cough or a plug that is
 * pulled correlates with it too. So what stands in the return where the click should be must look
 * like it, unless nothing there stands out of the noise.
 */
final class Impulse {
  private static final double SECONDS = 0.0027;

  /** The share of its energy that a click has within its own width. */
  private static final double CONCENTRATED = 0.9;

  /** How many times the usual energy of so short a time stands out. */
  private static final double STANDS_OUT = 4;

  /** The least squared correlation with the click that is its like. */
  private static final double LIKE = 0.5;

  /** Longer references are programme, not a click. */
  private static final double LONGEST_SECONDS = 61;

  private Impulse() {}

  /** Whether the reference is a click, and something stands in the return that is not. */
  static boolean isMistaken(Reading reading, double delay) {
    if (reading.reference().length() > LONGEST_SECONDS * reading.rate().hertz()) {
      return false;
    }
    int width = width(reading.rate());
    double[] reference = whole(reading.reference());
    int centre = PeakSearch.strongest(reference);
    double[] click = Arrays.copyOfRange(reference, Math.max(0, centre - width), centre + width);
    if (energy(click) < CONCENTRATED * energy(reference)) {
      return false;
    }
    double[] there = new double[click.length];
    int from = Math.max(0, centre - width) + (int) Math.rint(delay);
    reading.ret().copyTo(from, there, 0, there.length);
    double product = 0;
    for (int i = 0; i < click.length; i++) {
      product += click[i] * there[i];
    }
    double like = product * product / (energy(click) * energy(there));
    return like < LIKE && energy(there) > STANDS_OUT * usual(whole(reading.ret()), there.length);
  }

  private static int width(SampleRate rate) {
    return rate.samplesIn(SECONDS / 2);
  }

  private static double[] whole(Samples samples) {
    double[] all = new double[samples.length()];
    samples.copyTo(0, all, 0, all.length);
    return all;
  }

  private static double energy(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value * value;
    }
    return sum;
  }

  /** The median energy of stretches of a length. */
  private static double usual(double[] values, int length) {
    double[] energies = new double[Math.max(1, values.length / length)];
    Arrays.setAll(
        energies,
        i ->
            energy(
                Arrays.copyOfRange(values, i * length, Math.min(values.length, (i + 1) * length))));
    Arrays.sort(energies);
    return energies[energies.length / 2];
  }
}
