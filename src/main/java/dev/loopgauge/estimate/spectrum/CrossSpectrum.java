package dev.loopgauge.estimate.spectrum;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The cross-spectrum of a reference and a return, and with it their correlation R(lag) = sum over n
 * of reference(n) * return(n + lag) as a continuous, band-limited function.
 *
 * <p>At whole lags this is the linear correlation itself. Between them it is its Fourier
 * interpolation, exact for signals below half the rate; a parabola through three points is not (it
 * reads d / (2 (1 - 2 d^2)) for a true offset d on a flat band). Where R is largest in magnitude
 * lies the maximum-likelihood delay of a known signal in white noise (C. H. Knapp, G. C. Carter,
 * "The generalized correlation method for estimation of time delay", IEEE Trans. ASSP-24(4), 1976;
 * S. M. Kay, "Estimation Theory", example 7.15, from memory).
 */
public final class CrossSpectrum {
  /**
   * The part of the band that delays are read from. At its very edge no converter passes anything,
   * and a delay by a part of a sample has no meaning.
   */
  public static final double USABLE = 0.98;

  /**
   * From here on it is faded out. Cut off sharply, what lies there would ring over all lags, those
   * too that hold less than the whole correlation.
   */
  private static final double FADE = 0.96;

  private final BlockPlan plan;
  private final RealFft fft;
  private final double[] packed;

  /** The bins that are faded out, each times its weight; made when first needed. */
  private Optional<double[]> faded = Optional.empty();

  /** A cross-spectrum of one plan, as packed by a transform of its length. */
  CrossSpectrum(BlockPlan plan, RealFft fft, double[] packed) {
    this.plan = plan;
    this.fft = fft;
    this.packed = packed;
  }

  /** The value of the correlation at some lag, with its first and second derivative by the lag. */
  public record Point(double lag, double value, double slope, double curvature) {
    /** That so near by that the correlation doesn't bend otherwise (B. Taylor's series). */
    Point near(double there) {
      double by = there - lag;
      return new Point(
          there, value + by * (slope + by * curvature / 2), slope + by * curvature, curvature);
    }
  }

  /** The sum of some of one plan, at least one: several readings taken as one. */
  static CrossSpectrum sum(List<CrossSpectrum> spectra) {
    CrossSpectrum first = spectra.get(0);
    if (spectra.size() == 1) {
      return first;
    }
    double[] sum = first.packed.clone();
    for (CrossSpectrum other : spectra.subList(1, spectra.size())) {
      Packed.add(1, other.packed, sum);
    }
    return new CrossSpectrum(first.plan, first.fft, sum);
  }

  /** This less another of the same plan. */
  CrossSpectrum less(CrossSpectrum other) {
    double[] rest = packed.clone();
    Packed.add(-1, other.packed, rest);
    return new CrossSpectrum(plan, fft, rest);
  }

  /** This less arrivals of a reference's own spectrum: what its arrivals don't explain. */
  public CrossSpectrum without(List<FittedArrival> arrivals, CrossSpectrum auto) {
    if (arrivals.isEmpty()) {
      return this;
    }
    double[] rest = packed.clone();
    for (FittedArrival arrival : arrivals) {
      double[] shifted = auto.borrowed();
      Packed.fractionalDelay(shifted, -arrival.lag());
      Packed.add(-arrival.gain(), shifted, rest);
      auto.fft.giveBack(shifted);
    }
    return new CrossSpectrum(plan, fft, rest);
  }

  /** The magnitude of each bin from 0 to half the transform. */
  public double[] magnitudes() {
    return Packed.magnitudes(packed);
  }

  /** This times a real factor for each bin from 0 to half the transform. */
  public CrossSpectrum weighted(double[] factors) {
    double[] product = packed.clone();
    product[0] *= factors[0];
    product[1] *= factors[packed.length / 2];
    for (int k = 1; k < packed.length / 2; k++) {
      product[2 * k] *= factors[k];
      product[2 * k + 1] *= factors[k];
    }
    return new CrossSpectrum(plan, fft, product);
  }

  /** How the correlation was cut and how far it reaches. */
  public BlockPlan plan() {
    return plan;
  }

  /** The transform that it was made with. */
  public RealFft fft() {
    return fft;
  }

  /** The correlation at the whole lags -maxLag to +maxLag: lag k stands at index k + maxLag. */
  double[] wholeLags() {
    return lagsFrom(-plan.maxLag(), 2 * plan.maxLag() + 1);
  }

  /** The correlation at {@code count} lags one sample apart; the first may be fractional. */
  public double[] lagsFrom(double first, int count) {
    double[] lags = borrowed();
    int whole = (int) Math.floor(first);
    if (whole != first) {
      Packed.fractionalDelay(lags, first - whole);
    }
    return chosen(lags, whole, count);
  }

  private double[] borrowed() {
    double[] own = fft.borrow();
    System.arraycopy(packed, 0, own, 0, own.length);
    return own;
  }

  /** Turns a borrowed spectrum into lags, and gives it back. */
  private double[] chosen(double[] lags, int first, int count) {
    fft.inverse(lags);
    double[] chosen = new double[count];
    int from = Math.floorMod(first + plan.maxLag(), lags.length);
    int untilEnd = Math.min(count, lags.length - from);
    System.arraycopy(lags, from, chosen, 0, untilEnd);
    System.arraycopy(lags, 0, chosen, untilEnd, count - untilEnd);
    fft.giveBack(lags);
    return chosen;
  }

  /** The correlation at any lag, from the usable part of the band. */
  public Point at(double lag) {
    return at(lag, 0, firstUnused());
  }

  /** The part of the correlation that lies in the bins {@code lowest} to {@code highest}. */
  public Point at(double lag, int lowest, int highest) {
    int fade = firstFaded();
    int last = Math.min(highest, plan.transform() / 2 - 1);
    AnalyticValue sum = analytic(lag, 0, Math.max(lowest, 1), Math.min(last, fade - 1));
    sum.add(faded(), fade, Math.max(lowest, fade), Math.min(last, firstUnused() - 1));
    double constant = lowest == 0 ? packed[0] / 2 : 0;
    double scale = scale();
    return new Point(
        lag, scale * (constant + sum.re()), scale * sum.reSlope(), scale * sum.reCurvature());
  }

  private double[] faded() {
    if (faded.isEmpty()) {
      faded = Optional.of(findFaded());
    }
    return faded.get();
  }

  private double[] findFaded() {
    int first = firstFaded();
    double[] bins = Arrays.copyOfRange(packed, 2 * first, 2 * firstUnused());
    for (int i = 0; i < bins.length; i += 2) {
      double weight = 1 - (i + 2.0) / bins.length;
      bins[i] *= weight;
      bins[i + 1] *= weight;
    }
    return bins;
  }

  private int firstFaded() {
    return (int) (FADE * plan.transform() / 2);
  }

  private int firstUnused() {
    return (int) (USABLE * plan.transform() / 2);
  }

  private double scale() {
    return 2.0 / plan.transform();
  }

  private AnalyticValue analytic(double lag, double centre, int lowest, int highest) {
    return new AnalyticValue(plan.transform(), lag + plan.maxLag(), centre)
        .add(packed, 0, lowest, highest);
  }

  /**
   * The bins {@code lowest} to {@code highest}, turned to stand at a lag and summed by this many
   * together: real and imaginary part of each sum in turn.
   */
  public double[] summed(double lag, int lowest, int highest, int together) {
    double[] sums = new double[2 * ((highest - lowest) / together + 1)];
    for (int i = 0; i < sums.length; i += 2) {
      int from = lowest + i / 2 * together;
      AnalyticValue sum = analytic(lag, 0, from, Math.min(from + together - 1, highest));
      sums[i] = sum.re();
      sums[i + 1] = sum.im();
    }
    return sums;
  }

  /** The correlation's complex envelope from the bins {@code lowest} to {@code highest}. */
  public AnalyticValue envelope(double lag, int lowest, int highest) {
    return analytic(lag, (lowest + highest) / 2.0, lowest, highest);
  }

  /** The height of the envelope from the bins {@code lowest} to {@code highest}. */
  public double envelopeAt(double lag, int lowest, int highest) {
    return scale() * envelope(lag, lowest, highest).magnitude();
  }
}
