package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.stats.Median;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A reference that is one short click says little by itself: a clap, a cough or a plug that is
 * pulled correlates with it too. So most of what stands in the return where the click should be,
 * the usual noise taken off, must be the click; or, after a filter that makes no click of a click,
 * be the same each time it is played. And nothing else in the return, near or far, may look half as
 * much like it, as in applause one clap does as well as the next.
 */
final class Impulse {
  /**
   * How long a click lasts: 129 samples at 48 kHz, as the one that is played ({@link
   * dev.loopgauge.signal.Click}).
   */
  private static final double SECONDS = 0.0027;

  /** What share of an energy, of two sounds' likeness or of a correlation is most of it. */
  private static final double MOST = 0.5;

  /**
   * How many times the usual correlation a rival must have. Gaussian noise passes this about once
   * in two million lags. At 8, 2 more of 50 plugs gave a number; at 0, 7 of 150 faint clicks none.
   */
  private static final double ABOVE_NOISE = 5;

  private Impulse() {}

  /**
   * Whether the reference is a click, and something stands in a return that is not.
   *
   * @param readings of one path, one after the other
   * @param arrival the arrival that was found
   */
  static boolean isMistaken(List<Reading> readings, FittedArrival arrival) {
    return isUnlike(readings, arrival) || hasRival(readings, arrival.lag());
  }

  /** Whether what stands where the click should be neither is most of it nor recurs. */
  static boolean isUnlike(List<Reading> readings, FittedArrival arrival) {
    List<double[]> unlike = new ArrayList<>();
    for (Reading reading : readings) {
      Optional<Click> click = click(reading);
      if (click.isPresent()) {
        double[] there = click.get().there(reading.ret(), arrival.lag());
        if (!click.get().isMostOf(there, arrival.gain(), reading.ret())) {
          unlike.add(there);
        }
      }
    }
    return !unlike.isEmpty() && !(unlike.size() > 1 && recur(unlike));
  }

  private static boolean hasRival(List<Reading> readings, double delay) {
    for (Reading reading : readings) {
      Optional<Click> click = click(reading);
      if (click.isPresent() && hasRival(reading, delay, click.get().length())) {
        return true;
      }
    }
    return false;
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

    boolean isMostOf(double[] there, double gain, Samples ret) {
      double usual = usual(whole(ret), length);
      return gain * gain * energy >= MOST * (Loudness.energy(there) - usual);
    }
  }

  /** The click that a reference is; empty where it is none. */
  private static Optional<Click> click(Reading reading) {
    int width = reading.rate().samplesIn(SECONDS / 2);
    Loudness all = Loudness.of(reading.reference());
    if (2 * width * all.peak() * all.peak() < MOST * all.energy()) {
      return Optional.empty(); // were all of it as loud as the peak
    }
    double[] reference = whole(reading.reference());
    int centre = PeakSearch.strongest(reference);
    int from = Math.max(0, centre - width);
    double[] click = Arrays.copyOfRange(reference, from, centre + width);
    double energy = Loudness.energy(click);
    return energy < MOST * all.energy()
        ? Optional.empty()
        : Optional.of(new Click(from, click.length, energy));
  }

  /** Whether the same stands there each time: two claps are no more alike than clap and click. */
  private static boolean recur(List<double[]> sounds) {
    for (int i = 1; i < sounds.size(); i++) {
      if (squaredCorrelation(sounds.get(i - 1), sounds.get(i)) < MOST) {
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
    return rival > MOST * Math.abs(lags[here]) && rival > ABOVE_NOISE * usual;
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
