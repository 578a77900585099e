package dev.loopgauge.estimate.measurand;

import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.Quantiles;
import dev.loopgauge.stats.StraightLine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The group delay octave by octave of a response: the slope of its phase, bands counting alike. */
public final class GroupDelays {
  private static final int OCTAVE = 12;
  private static final int FEWEST = 4;

  /**
   * One octave, or what of one there is.
   *
   * @param omega its middle, in radians a sample
   * @param samples the group delay, in samples after the lag taken out
   * @param standard its standard uncertainty, from how far the phase lies off a line
   * @param bands how many bands that is known from
   */
  public record Octave(double omega, double samples, double standard, int bands) {
    Octave later(double lag) {
      return new Octave(omega, samples + lag, standard, bands);
    }

    /**
     * How likely chance alone sets another so much later than this: Student's t with the degrees of
     * freedom of two scatters (B. L. Welch, Biometrika 34, 1947, from memory).
     */
    double chanceOf(Octave late) {
      double own = standard * standard;
      double others = late.standard * late.standard;
      if (own + others == 0) {
        return 0;
      }
      double free =
          Math.pow(own + others, 2)
              / (own * own / (bands - 2) + others * others / (late.bands - 2));
      return Quantiles.studentBeyond((late.samples - samples) / Math.sqrt(own + others), free);
    }
  }

  /**
   * The octaves that come earliest and latest.
   *
   * @param early the earliest
   * @param late the latest
   */
  public record Ends(Octave early, Octave late) {
    /** How far apart they lie, in samples. */
    public double apart() {
      return late.samples() - early.samples();
    }
  }

  private GroupDelays() {}

  /** The two octaves furthest apart, where chance sets no pair so far apart; pairs are counted. */
  static Optional<Ends> ends(BandResponse response) {
    List<Octave> octaves = of(response);
    if (octaves.size() < 2) {
      return Optional.empty();
    }
    Octave early = octaves.get(0);
    Octave late = early;
    for (Octave octave : octaves) {
      early = octave.samples() < early.samples() ? octave : early;
      late = octave.samples() > late.samples() ? octave : late;
    }
    double pairs = octaves.size() * (octaves.size() - 1) / 2.0;
    return pairs * early.chanceOf(late) < Odds.BY_CHANCE
        ? Optional.of(new Ends(early.later(response.lag()), late.later(response.lag())))
        : Optional.empty();
  }

  /** The octaves of a response, low to high. */
  static List<Octave> of(BandResponse response) {
    double[] omegas = response.omegas();
    double[] phases = response.phases(0);
    List<Octave> octaves = new ArrayList<>();
    int from = 0;
    while (from < omegas.length) {
      int to = from + 1;
      while (to < omegas.length && omegas[to] < 2 * omegas[from] && to - from < OCTAVE) {
        to++;
      }
      if (to - from >= FEWEST) {
        octaves.add(octave(omegas, phases, from, to));
      }
      from = to;
    }
    return octaves;
  }

  private static Octave octave(double[] omegas, double[] phases, int from, int to) {
    double[] alike = new double[to - from];
    Arrays.fill(alike, 1);
    StraightLine line =
        StraightLine.weighted(
            Arrays.copyOfRange(omegas, from, to), Arrays.copyOfRange(phases, from, to), alike);
    double scatter = line.squares() / (alike.length - 2);
    double standard = Math.sqrt(scatter / line.spread());
    return new Octave(line.middleX(), -line.slope(), standard, alike.length);
  }
}
