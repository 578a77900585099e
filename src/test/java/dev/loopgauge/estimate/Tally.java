package dev.loopgauge.estimate;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * The errors of many trials, each in units of its Cramer-Rao bound, and whether they can be those
 * of an estimator that keeps its promises. Chance makes a good one fail once in {@value #ONE_IN}
 * checks; that is where the tolerances come from.
 */
final class Tally {
  private static final int ONE_IN = 10_000;
  private static final double CHANCE = 1.0 / ONE_IN;

  /**
   * What an estimator promises.
   *
   * @param rms the largest root mean square of its errors, in bounds
   * @param refused the largest share that it refuses
   */
  record Promise(double rms, double refused) {
    /** The stricter of both. */
    Promise and(Promise other) {
      return new Promise(Math.min(rms, other.rms), Math.min(refused, other.refused));
    }
  }

  private final String name;
  private int trials;
  private int refused;
  private int covered;
  private double sum;
  private double squares;
  private double widths;
  private double widest;

  /** An empty tally. */
  Tally(String name) {
    this.name = name;
  }

  /** A tally of an earlier run. */
  static Tally read(String name, List<String> figures) {
    Tally tally = new Tally(name);
    tally.trials = Integer.parseInt(figures.get(0));
    tally.refused = Integer.parseInt(figures.get(1));
    tally.covered = Integer.parseInt(figures.get(2));
    tally.sum = Double.parseDouble(figures.get(3));
    tally.squares = Double.parseDouble(figures.get(4));
    tally.widths = Double.parseDouble(figures.get(5));
    tally.widest = Double.parseDouble(figures.get(6));
    return tally;
  }

  /** All that {@link #read} asks for. */
  List<String> figures() {
    return Stream.of(trials, refused, covered, sum, squares, widths, widest)
        .map(String::valueOf)
        .toList();
  }

  /** Counts one trial of a known delay. */
  void add(Estimate estimate, double trueDelay, double bound) {
    trials++;
    if (!(estimate instanceof Estimate.Found found)) {
      refused++;
      return;
    }
    Measurement measurement = found.measurement();
    double error = measurement.delay().samples() - trueDelay;
    double width = measurement.uncertaintySamples() / 2 / bound;
    covered += Math.abs(error) <= measurement.uncertaintySamples() ? 1 : 0;
    sum += error / bound;
    squares += error / bound * (error / bound);
    widths += width;
    widest = Math.max(widest, width);
  }

  /** This and another tally as one. */
  Tally plus(Tally other) {
    Tally both = new Tally(name);
    both.trials = trials + other.trials;
    both.refused = refused + other.refused;
    both.covered = covered + other.covered;
    both.sum = sum + other.sum;
    both.squares = squares + other.squares;
    both.widths = widths + other.widths;
    both.widest = Math.max(widest, other.widest);
    return both;
  }

  private int found() {
    return trials - refused;
  }

  private double rms() {
    return Math.sqrt(squares / found());
  }

  /** The first promise broken. */
  Optional<String> broken(Promise promise) {
    int n = found();
    if (refused > quantile(trials, promise.refused(), 1 - CHANCE)) {
      return Optional.of("refuses " + refused + " of " + trials);
    }
    double chi = new ChiSquaredDistribution(n).inverseCumulativeProbability(1 - CHANCE);
    if (squares > promise.rms() * promise.rms() * chi) {
      return Optional.of("errs by more than " + promise.rms() + " bounds rms");
    }
    double spread = new NormalDistribution().inverseCumulativeProbability(1 - CHANCE / 2);
    if (Math.abs(sum / n) > 0.1 + spread * rms() / Math.sqrt(n)) {
      return Optional.of("is biased by more than 0.1 bound");
    }
    if (covered < quantile(n, 0.94, CHANCE) || covered > quantile(n, 0.97, 1 - CHANCE)) {
      return Optional.of("covers not 94 to 97 % of the errors");
    }
    return widths / n > 1.5 * Math.max(1, rms())
        ? Optional.of("claims more than 1.5 times what it needs")
        : Optional.empty();
  }

  private static int quantile(int n, double share, double probability) {
    return new BinomialDistribution(null, n, share).inverseCumulativeProbability(probability);
  }

  /** The head of a Markdown table of tallies. */
  static String tableHead() {
    return """
        | stimulus, rate, signal to noise per sample | trials | refused | RMS error / bound \
        | bias / bound | covered by k = 2 | claimed / needed, mean | widest |
        |---|---|---|---|---|---|---|---|
        """;
  }

  /** This tally as a row of the table. */
  @Override
  public String toString() {
    int n = found();
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %.3f | %+.3f | %.1f %% | %.2f | %.2f |%n",
        name,
        trials,
        refused,
        rms(),
        sum / n,
        100.0 * covered / n,
        widths / n / rms(),
        widest / rms());
  }
}
