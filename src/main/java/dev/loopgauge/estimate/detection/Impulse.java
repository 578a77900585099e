package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.stats.Median;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A reference that is one short click says little by itself: a clap, a cough or a plug that is
 * pulled correlates with it too. So what stands in the return where the click should be must look
 * like it, unless nothing there stands out of the noise; or, after a filter that makes no click of
 * a click, be the same each time it is played. And nothing else in the return, near or far, may
 * look half as much like it, as in applause one clap does as well as the next.
 */
final class Impulse {
  private static final double SECONDS = 0.0027;

  /** The share of its energy that a click has within its own width. */
  private static final double CONCENTRATED = 0.9;

  /** How many times the usual energy of so short a time stands out. */
  private static final double STANDS_OUT = 4;

  /** The least squared correlation with the click that is its like. */
  private static final double LIKE = 0.5;

  /** What share of the click's correlation another may have anywhere in the return. */
  private static final double RIVAL = 0.5;

  /**
   * How many times the usual correlation a rival must have. Gaussian noise passes this about once
   * in two million lags.
   */
  private static final double ABOVE_NOISE = 5;

  /** Longer references are programme, not a click. */
  private static final double LONGEST_SECONDS = 61;

  private Impulse() {}

  /**
   * Whether the reference is a click, and something stands in a return that is not.
   *
   * @param readings of one path, one after the other
   * @param arrival the arrival that was found
   */
  static boolean isMistaken(List<Reading> readings, FittedArrival arrival) {
    List<double[]> unlike = new ArrayList<>();
    for (Reading reading : readings) {
      Optional<Click> click = click(reading);
      if (click.isEmpty()) {
        continue;
      }
      double[] there = click.get().there(reading.ret(), arrival.lag());
      if (!click.get().isLike(there, arrival.gain()) && standsOut(reading, there)) {
        unlike.add(there);
      }
      if (hasRival(reading, arrival.lag(), there.length)) {
        return true;
      }
    }
    return !unlike.isEmpty() && !(unlike.size() > 1 && recur(unlike));
  }

  /**
   * The click that a reference is, with what is beside it.
   *
   * @param from where it starts in the reference
   * @param length how long it is, in samples
   * @param energy of it
   */
  private record Click(int from, int length, double energy) {
    /** What stands in a return where the click should be. */
    double[] there(Samples ret, double lag) {
      double[] there = new double[length];
      ret.copyTo(from + (int) Math.rint(lag), there, 0, length);
      return there;
    }

    boolean isLike(double[] there, double gain) {
      return gain * gain * energy >= LIKE * Loudness.energy(there);
    }
  }

  /** The click that a reference is; empty where it is none. */
  private static Optional<Click> click(Reading reading) {
    int width = width(reading.rate());
    if (reading.reference().length() > LONGEST_SECONDS * reading.rate().hertz()
        || !canBeClick(reading.reference(), 2 * width)) {
      return Optional.empty();
    }
    double[] reference = whole(reading.reference());
    int centre = PeakSearch.strongest(reference);
    int from = Math.max(0, centre - width);
    double[] click = Arrays.copyOfRange(reference, from, centre + width);
    double energy = Loudness.energy(click);
    return energy < CONCENTRATED * Loudness.energy(reference)
        ? Optional.empty()
        : Optional.of(new Click(from, click.length, energy));
  }

  private static boolean standsOut(Reading reading, double[] there) {
    return Loudness.energy(there) > STANDS_OUT * usual(whole(reading.ret()), there.length);
  }

  /** Whether the same stands there each time: two claps are no more alike than clap and click. */
  private static boolean recur(List<double[]> sounds) {
    for (int i = 1; i < sounds.size(); i++) {
      if (squaredCorrelation(sounds.get(i - 1), sounds.get(i)) < LIKE) {
        return false;
      }
    }
    return true;
  }

  private static double squaredCorrelation(double[] one, double[] other) {
    double product = 0;
    for (int i = 0; i < Math.min(one.length, other.length); i++) {
      product += one[i] * other[i];
    }
    return product * product / (Loudness.energy(one) * Loudness.energy(other));
  }

  /** Whether most of the energy could lie within a length, were all of that as loud as the peak. */
  private static boolean canBeClick(Samples reference, int length) {
    Loudness all = Loudness.of(reference);
    return length * all.peak() * all.peak() >= CONCENTRATED * all.energy();
  }

  /** Whether anything further than a click's length from the delay correlates nearly as well. */
  private static boolean hasRival(Reading reading, double delay, int apart) {
    int length = Math.max(reading.reference().length(), reading.ret().length());
    Spectra wide = Spectra.of(List.of(reading), (double) length / reading.rate().hertz());
    double[] lags = wide.searched(wide.cross());
    int here = (int) Math.rint(delay) + wide.searchLag();
    double rival = 0;
    double sum = 0;
    for (int i = 0; i < lags.length; i++) {
      if (Math.abs(i - here) > apart) {
        rival = Math.max(rival, Math.abs(lags[i]));
        sum += lags[i] * lags[i];
      }
    }
    double usual = Math.sqrt(sum / reading.ret().length());
    return rival > RIVAL * Math.abs(lags[here]) && rival > ABOVE_NOISE * usual;
  }

  private static int width(SampleRate rate) {
    return rate.samplesIn(SECONDS / 2);
  }

  private static double[] whole(Samples samples) {
    double[] all = new double[samples.length()];
    samples.copyTo(0, all, 0, all.length);
    return all;
  }

  /** The median energy of segments of a length. */
  private static double usual(double[] values, int length) {
    double[] energies = new double[Math.max(1, values.length / length)];
    Arrays.setAll(
        energies,
        i ->
            Loudness.energy(
                Arrays.copyOfRange(values, i * length, Math.min(values.length, (i + 1) * length))));
    return Median.of(energies);
  }
}
