package dev.loopgauge.estimate.integrity;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.OneStep;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Whether the path's level moves while it plays, as automatic gain, noise suppression, a compressor
 * or a gate make it.
 *
 * <p>In pieces of about 50 ms the return is projected on what the fitted path makes of the
 * reference: a steady path gives 1 each time. The variance of such a gain is what it leaves of the
 * piece, or of all pieces in the mean where that is more, over the arrivals' energy and the number
 * of windows: each counts as one value, since what a fit leaves is as narrow as its sound (derived:
 * least squares). One gain is asked against gains that scatter by a normal law of any width, by the
 * odds of both. One gap is a loss of its own; a gate makes many. Within one sweep the fit takes a
 * moving level for a frequency response, so there only a jump is told ({@link PhaseJump}).
 */
public final class GainModulation {
  /** What a fader that is moved on purpose moves is more, in dB (common practice, no source). */
  public static final double LEAST_DB = 0.5;

  /** How many windows make a piece. */
  private static final int TOGETHER = 10;

  /** The size that is told leaves out this share of the gains on either side. */
  private static final double OUTSIDE = 0.1;

  private final double[] gains;
  private final double[] variances;

  /**
   * Some gains.
   *
   * @param variances of each, above 0
   */
  GainModulation(double[] gains, double[] variances) {
    this.gains = gains;
    this.variances = variances;
  }

  /** The gains in some readings, in their order. */
  public static GainModulation of(List<LostSound> readings) {
    List<LostSound.Heard> pieces = new ArrayList<>();
    for (LostSound reading : readings) {
      List<LostSound.Heard> windows = new ArrayList<>(reading.windows());
      List<LostSound.Gap> gaps = GapSearch.of(reading);
      windows.removeIf(window -> gaps.size() == 1 && gaps.get(0).holds(window.from()));
      for (int from = 0; from + TOGETHER <= windows.size(); from += TOGETHER) {
        pieces.add(LostSound.Heard.sum(windows.subList(from, from + TOGETHER)));
      }
    }
    pieces.removeIf(piece -> piece.arrivals() <= 0 || piece.sent() <= 0);
    double arrivals = pieces.stream().mapToDouble(LostSound.Heard::arrivals).sum();
    double passed = arrivals / pieces.stream().mapToDouble(LostSound.Heard::sent).sum();
    double mean = pieces.stream().mapToDouble(GainModulation::left).average().orElse(0);
    return new GainModulation(
        pieces.stream().mapToDouble(GainModulation::gain).toArray(),
        pieces.stream()
            .mapToDouble(p -> Math.max(left(p), mean) / (TOGETHER * known(p, passed)) + 0x1p-52)
            .toArray());
  }

  /** The energy of the arrivals, but no more than what was sent then makes in the mean: no ring. */
  private static double known(LostSound.Heard piece, double passed) {
    return Math.min(piece.arrivals(), passed * piece.sent());
  }

  private static double gain(LostSound.Heard piece) {
    return piece.product() / piece.arrivals();
  }

  private static double left(LostSound.Heard piece) {
    return Math.max(0, piece.all() - gain(piece) * piece.product());
  }

  /**
   * By how much the level moves, in dB; 0 where it stays, or where that isn't beyond doubt. The
   * gains of pieces that are known better than they scatter tell it.
   */
  public double byDb() {
    double scatter = 0;
    for (double variance = 1; variance > 0x1p-30; variance /= 2) {
      scatter = likelihood(variance) > likelihood(scatter) ? variance : scatter;
    }
    if (likelihood(scatter) - likelihood(0) < Odds.BEYOND_DOUBT) {
      return 0;
    }
    double most = scatter;
    double least = Math.sqrt(Arrays.stream(variances).min().orElse(0));
    double[] known =
        IntStream.range(0, gains.length)
            .filter(i -> variances[i] < most)
            .mapToDouble(i -> Math.max(least, gains[i]))
            .sorted()
            .toArray();
    int outside = (int) (OUTSIDE * known.length);
    return known.length == 0
        ? 0
        : Decibels.ofFactor(known[known.length - 1 - outside] / known[outside]);
  }

  /** The logarithm of the likelihood of the gains, where they scatter by a variance. */
  private double likelihood(double scatter) {
    double weights = 0;
    double sum = 0;
    double squares = 0;
    double logarithms = 0;
    for (int i = 0; i < gains.length; i++) {
      double weight = 1 / (variances[i] + scatter);
      weights += weight;
      sum += weight * (gains[i] - 1);
      squares += weight * (gains[i] - 1) * (gains[i] - 1);
      logarithms += Math.log(weight);
    }
    return (logarithms - squares + sum * sum / Math.max(weights, Double.MIN_NORMAL)) / 2;
  }

  /** The same gains without the one step that explains them best. */
  public GainModulation withoutStep() {
    double[] weights = Arrays.stream(variances).map(variance -> 1 / variance).toArray();
    double[] level = gains.clone();
    OneStep.of(gains, weights)
        .ifPresent(
            step -> {
              for (int i = step.at(); i < level.length; i++) {
                level[i] -= (i > step.at() ? 1 : 1 - step.share()) * step.value();
              }
            });
    return new GainModulation(level, variances);
  }
}
