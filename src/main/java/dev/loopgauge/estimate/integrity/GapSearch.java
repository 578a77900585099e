package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.integrity.LostSound.Gap;
import dev.loopgauge.estimate.integrity.LostSound.Heard;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.Odds;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds where a return holds none of the arrivals of its reference, although it holds them before
 * and after.
 *
 * <p>A piece with the arrivals x and the return r is likelier lost than there by (|r - x|^2 -
 * |r|^2) / 2v, as a logarithm, where v is what the fit leaves where there is sound, counted as one
 * value a piece: what a fit leaves is as narrow as its sound. It must be likelier, too, to hold the
 * noise alone than any sound as loud as the arrivals, so that a level that moves is no loss; the
 * noise is what is left of most pieces. The smaller of both adds up from piece to piece ("CUSUM",
 * E. S. Page, Biometrika 41, 1954, from memory). Where nothing is lost a sum over given pieces
 * passes n once in e^n at most (derived: a likelihood ratio's mean is 1), and the logarithm of the
 * number of intervals comes off. Where a sound starts or ends nothing is lost: on both sides it
 * must be there by the same odds.
 */
public final class GapSearch {
  /**
   * The logarithm of likelihoods below which a piece tells nothing: its arrivals are as faint as
   * what is left, so they may be the fit's own, of which many pieces hold one value.
   */
  private static final double LEAST = 1;

  private final List<Heard> pieces;
  private final int samples;
  private final double gain;
  private final double noise;
  private final double left;
  private final double beyondDoubt;

  /**
   * A search in some pieces.
   *
   * @param samples how many each has
   */
  GapSearch(List<Heard> pieces, int samples) {
    this.pieces = pieces;
    this.samples = samples;
    double sent = Double.MIN_NORMAL;
    double arrivals = 0;
    for (Heard piece : pieces) {
      sent += piece.sent();
      arrivals += piece.arrivals();
    }
    this.gain = arrivals / sent;
    double most = Median.of(pieces.stream().mapToDouble(Heard::residual).toArray());
    this.noise = Math.max(most, Double.MIN_NORMAL + arrivals / pieces.size() * 0x1p-52);
    this.left = left();
    double intervals = pieces.size() * (pieces.size() + 1.0) / 2;
    this.beyondDoubt = Odds.BEYOND_DOUBT + Math.log(intervals);
  }

  /** The energy that is left of a piece where the return isn't silent, weighted by its arrivals. */
  private double left() {
    double sum = 0;
    double weights = Double.MIN_NORMAL;
    for (Heard piece : pieces) {
      if (silent(piece, piece.arrivals()) <= 0) {
        sum += piece.arrivals() * piece.residual();
        weights += piece.arrivals();
      }
    }
    return Math.max(noise, sum / weights);
  }

  /** The gaps in what was heard, in their order. */
  public static List<Gap> of(LostSound heard) {
    return heard.pieces().isEmpty()
        ? List.of()
        : new GapSearch(heard.pieces(), heard.samples()).gaps();
  }

  /** The gaps, in their order. */
  List<Gap> gaps() {
    List<Gap> gaps = new ArrayList<>();
    boolean sounded = false;
    double there = 0;
    double lost = 0;
    double most = 0;
    int first = 0;
    int behind = 0;
    for (int i = 0; i < pieces.size(); i++) {
      double odds = lost(pieces.get(i));
      there = Math.max(0, there - odds);
      if (!sounded) {
        sounded = there > beyondDoubt;
        continue;
      }
      if (lost <= 0 && most <= beyondDoubt) {
        lost = 0;
        most = 0;
        first = i;
      }
      lost += Math.min(odds, silent(pieces.get(i), due(pieces.get(i))));
      if (lost > most) {
        most = lost;
        behind = i + 1;
        there = 0;
      }
      if (most > beyondDoubt && there > beyondDoubt) {
        int from = pieces.get(first).from();
        gaps.add(new Gap(from, pieces.get(behind - 1).from() + samples - from));
        lost = 0;
        most = 0;
      }
    }
    return gaps;
  }

  /** What of the arrivals was sent there: a path fitted to a few tones rings where nothing was. */
  private double due(Heard piece) {
    return Math.min(piece.arrivals(), gain * piece.sent());
  }

  /** By how much the arrivals are likelier lost than there. */
  private double lost(Heard piece) {
    double odds = (piece.residual() - piece.all()) / (2 * left);
    boolean faint = piece.arrivals() <= LEAST * 2 * left;
    return odds <= 0 ? odds : faint ? 0 : odds * due(piece) / piece.arrivals();
  }

  /** By how much noise is likelier than noise and any sound that is as loud as something. */
  private double silent(Heard piece, double loud) {
    double all = piece.all();
    return samples / 2.0 * (Math.log1p(loud / noise) + all / (noise + loud) - all / noise);
  }
}
