package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Subtraction;
import dev.loopgauge.stats.Median;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Finds segments in which the found arrival is missing from the return although it is there before
 * and after: lost blocks.
 *
 * <p>In windows of about 5 ms the return is projected on the arrivals. A window is lost when less
 * than {@value #LOST} of what its surroundings hold is in it and little else either. It counts only
 * between windows that hold the sound, so that what a filter takes from the start or the end of a
 * sweep is not taken for a loss; and where the reference sounds too, since a path that was fitted
 * to a few tones may ring where nothing was sent.
 */
public final class LostSound {
  private static final double WINDOW_SECONDS = 0.005;
  private static final double LOST = 0.1;
  private static final double PRESENT = 0.6;
  private static final double LOUD_ENOUGH = 0.05;

  /** How many times the variance of what is left a window's arrivals must hold to be judged. */
  private static final double ABOVE_NOISE = 1000;

  /**
   * The share of the windows that hold no more than noise besides the arrivals: what others have
   * left may be the sound, where no fitted path describes all of it.
   */
  private static final double QUIET = 0.1;

  /** How many times what these hold the noise of a window may: it has few degrees of freedom. */
  private static final double NOISE = 2;

  /** How many windows on either side of a group are its surroundings, and how many it has. */
  private static final int SURROUNDINGS = 40;

  private static final int GROUP = 20;

  private final int window;
  private final int start;
  private final double[] found;
  private final double[] ret;
  private final double[] reference;
  private final List<Heard> windows = new ArrayList<>();

  /** A search in one reading. */
  public LostSound(Reading reading) {
    this.window = reading.rate().samplesIn(WINDOW_SECONDS);
    this.start = reading.start();
    this.found = new double[window + 2];
    this.ret = new double[window];
    this.reference = new double[window];
  }

  /**
   * Sound that was lost.
   *
   * @param from where it starts, in samples from the start of the capture
   * @param length for how many samples, to within a window
   */
  public record Gap(int from, int length) {}

  /**
   * What one window holds, as energies.
   *
   * @param from where it starts, in samples from the start of the capture
   * @param sent the reference, the arrivals' whole delay taken out
   * @param arrivals what the fitted path makes of the reference
   * @param product the product of that with the return
   * @param all the return
   * @param residual the return less the arrivals
   * @param steepness the squared slope of the arrivals
   * @param lateness the product of that slope with what is left, times -1: over the steepness this
   *     is by how much the return is later than the arrivals
   */
  public record Heard(
      int from,
      double sent,
      double arrivals,
      double product,
      double all,
      double residual,
      double steepness,
      double lateness) {
    /** Windows in a row as one, at least one. */
    static Heard sum(List<Heard> windows) {
      Heard sum = windows.get(0);
      for (Heard next : windows.subList(1, windows.size())) {
        sum = sum.plus(next);
      }
      return sum;
    }

    /** This and the next as one. */
    public Heard plus(Heard next) {
      return new Heard(
          from,
          sent + next.sent,
          arrivals + next.arrivals,
          product + next.product,
          all + next.all,
          residual + next.residual,
          steepness + next.steepness,
          lateness + next.lateness);
    }
  }

  /**
   * Windows added up in stretches alike.
   *
   * @param count how many stretches; there are none where there are fewer windows
   */
  public static List<Heard> stretches(List<Heard> windows, int count) {
    int length = windows.size() / count;
    List<Heard> stretches = new ArrayList<>();
    for (int i = 0; length > 0 && i < count; i++) {
      stretches.add(Heard.sum(windows.subList(i * length, (i + 1) * length)));
    }
    return stretches;
  }

  /** All windows, in their order. */
  public List<Heard> windows() {
    return windows;
  }

  /** Looks at one block of a subtraction. */
  public void add(Subtraction source) {
    for (int from = 0; from + window <= source.length(); from += window) {
      windows.add(heard(source, from));
    }
  }

  private Heard heard(Subtraction source, int from) {
    double sent = 0;
    double arrivals = 0;
    double product = 0;
    double all = 0;
    double residual = 0;
    double steepness = 0;
    double lateness = 0;
    source.copyFound(from - 1, found, 0, found.length);
    source.copyReturn(from, ret, 0, window);
    source.copyReference(from, reference, 0, window);
    for (int i = 0; i < window; i++) {
      double here = found[i + 1];
      double rest = ret[i] - here;
      double slope = (found[i + 2] - found[i]) / 2;
      sent += reference[i] * reference[i];
      arrivals += here * here;
      product += here * ret[i];
      all += ret[i] * ret[i];
      residual += rest * rest;
      steepness += slope * slope;
      lateness -= slope * rest;
    }
    return new Heard(
        start + source.start() + from, sent, arrivals, product, all, residual, steepness, lateness);
  }

  /** Adds what comes next in the same reading. */
  public void add(LostSound next) {
    windows.addAll(next.windows);
  }

  /**
   * The centre of the sound that tells the delay, in samples from the start of the capture: each
   * window counts by the squared slope of its arrivals, as it does for the lag at which least is
   * left (derived: least squares). Empty where no arrival was fitted.
   */
  public OptionalDouble centre() {
    double all = 0;
    double product = 0;
    for (Heard heard : windows) {
      all += heard.steepness();
      product += heard.steepness() * (heard.from() + window / 2.0);
    }
    return all > 0 ? OptionalDouble.of(product / all) : OptionalDouble.empty();
  }

  /** The gaps, in their order. */
  public List<Gap> gaps() {
    List<Gap> gaps = new ArrayList<>();
    int first = -1;
    int behind = -1;
    boolean soundBefore = false;
    List<Boolean> loud = loud();
    double noise = NOISE * quietest();
    Usual usual = new Usual(1, 1);
    for (int i = 0; i < windows.size(); i++) {
      if (i % GROUP == 0) {
        usual = usual(loud, i - SURROUNDINGS, i + GROUP + SURROUNDINGS);
      }
      double share = loud.get(i) ? usual.shareOf(windows.get(i), noise) : Double.NaN;
      if (share < LOST && soundBefore) {
        first = first < 0 ? i : first;
        behind = i + 1;
      } else if (share > PRESENT) {
        if (first >= 0) {
          int from = windows.get(first).from();
          gaps.add(new Gap(from, windows.get(behind).from() - from));
        }
        first = -1;
        soundBefore = true;
      } else if (share >= LOST && behind == i) {
        behind = i + 1;
      }
    }
    return gaps;
  }

  /** Which windows can be judged. */
  private List<Boolean> loud() {
    double arrivals = 0;
    double sent = 0;
    for (Heard heard : windows) {
      arrivals += heard.arrivals() / windows.size();
      sent += heard.sent() / windows.size();
    }
    double enough =
        Math.max(LOUD_ENOUGH * arrivals, ABOVE_NOISE * medianResidual(windows) / window);
    List<Boolean> loud = new ArrayList<>();
    for (Heard heard : windows) {
      loud.add(heard.arrivals() >= enough && heard.sent() >= LOUD_ENOUGH * sent);
    }
    return loud;
  }

  /** The most that is left in the windows where least is. */
  private double quietest() {
    double[] residual = residuals(windows);
    Arrays.sort(residual);
    return residual.length == 0 ? 0 : residual[(int) (QUIET * residual.length)];
  }

  /** What windows usually hold of the arrivals, and of all, against the arrivals' energy. */
  private record Usual(double product, double all) {
    /**
     * How much of that is in a window, besides some noise: 1 where all is well. Not a number where
     * there isn't enough of the arrivals all around: a path that was fitted to a few tones rings.
     */
    double shareOf(Heard here, double noise) {
      if (product < PRESENT) {
        return Double.NaN;
      }
      double projected = here.product() / here.arrivals() / product;
      double loud = Math.max(0, here.all() - noise) / here.arrivals() / all;
      return Math.max(projected, Math.sqrt(loud));
    }
  }

  /** Around a group; of all windows where so few can be judged there that most may be lost. */
  private Usual usual(List<Boolean> loud, int from, int to) {
    List<Heard> around = loud(loud, Math.max(0, from), Math.min(windows.size(), to));
    List<Heard> some = around.size() < GROUP ? loud(loud, 0, windows.size()) : around;
    double[] products = new double[some.size()];
    double[] all = new double[some.size()];
    for (int i = 0; i < all.length; i++) {
      products[i] = some.get(i).product() / some.get(i).arrivals();
      all[i] = some.get(i).all() / some.get(i).arrivals();
    }
    return new Usual(median(products), median(all));
  }

  private List<Heard> loud(List<Boolean> loud, int from, int to) {
    List<Heard> some = new ArrayList<>();
    for (int i = from; i < to; i++) {
      if (loud.get(i)) {
        some.add(windows.get(i));
      }
    }
    return some;
  }

  /** The median of what is left in some windows, 0 of none. */
  static double medianResidual(List<Heard> windows) {
    return median(residuals(windows));
  }

  private static double[] residuals(List<Heard> windows) {
    double[] residual = new double[windows.size()];
    for (int i = 0; i < residual.length; i++) {
      residual[i] = windows.get(i).residual();
    }
    return residual;
  }

  private static double median(double[] values) {
    return values.length == 0 ? 0 : Median.of(values);
  }
}
