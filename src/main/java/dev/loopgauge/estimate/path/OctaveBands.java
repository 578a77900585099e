package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.Phasor;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The delay by octave band: where the envelope of the band's correlation is largest, which is the
 * group delay, so that it is not off by periods of the band's own frequency. Centres are the
 * nominal ones of IEC 61260-1 (from memory).
 */
final class OctaveBands {
  private static final double[] CENTRES = {31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000};

  /**
   * How many standard deviations a band's correlation must stand above its noise: what the series
   * of delay and level leave out is the square of one over it, 1 % of an uncertainty (derived).
   */
  private static final double TRUSTED = 10;

  private static final double HIGHEST_PER_RATE = 0.48;

  /** The grid on which the envelope is first looked at, in parts of the band's own width. */
  private static final double GRID = 0.2;

  /**
   * Bins that turn by no more than this between delay and reach, in radians, are looked at as one:
   * their sum loses 1 - sinc(0.25), 1 %, at the edge (derived).
   */
  private static final double TURNED_TOGETHER = 0.5;

  private static final int STEPS = 20;

  private final CrossSpectrum cross;
  private final CrossSpectrum auto;
  private final CrossSpectrum whole;
  private final Residual residual;
  private final SampleRate rate;

  /**
   * The bands of one correlation.
   *
   * @param cross the return's with the reference
   * @param auto the reference's with itself
   * @param whole the same before the reference was filtered; the same again where it wasn't
   * @param residual what is left beside the arrival
   */
  OctaveBands(
      CrossSpectrum cross,
      CrossSpectrum auto,
      CrossSpectrum whole,
      Residual residual,
      SampleRate rate) {
    this.cross = cross;
    this.auto = auto;
    this.whole = whole;
    this.residual = residual;
    this.rate = rate;
  }

  /**
   * The bands whose delay can be told, low to high, near a delay. Noise raises the highest value of
   * an envelope by its variance over its height, half of it by the quadrature and half for it was
   * looked for; the logarithm is lowered by half of that (derived, to the second order). So a level
   * in dB is freed of the noise where one variance is taken off the envelope's square.
   */
  List<Band> near(double delay) {
    List<Band> bands = new ArrayList<>();
    for (double centre : CENTRES) {
      Optional<Band> band = band(centre, delay);
      if (band.isPresent()) {
        bands.add(band.get());
      }
    }
    return bands;
  }

  private Optional<Band> band(double centre, double delay) {
    double low = centre / Math.sqrt(2) / rate.hertz();
    double high = Math.min(centre * Math.sqrt(2) / rate.hertz(), HIGHEST_PER_RATE);
    int from = (int) Math.ceil(low * 2 * residual.bins());
    int to = (int) Math.floor(high * 2 * residual.bins()) + 1;
    if (to - from < 2 || residual.power(from, to) == 0) {
      return Optional.empty();
    }
    int transform = cross.plan().transform();
    int lowest = (int) Math.ceil(low * transform);
    int highest = (int) Math.floor(high * transform);
    double width = high - low;
    double middle = residual.centre(from, to);
    double reach = 2 * rate.hertz() / centre + rate.samplesIn(0.001);
    double peak = climb(coarse(delay, reach, GRID / width, lowest, highest), lowest, highest);
    double level = cross.envelopeAt(peak, lowest, highest);
    double gain = level / residual.power(from, to);
    double noise = Math.sqrt(residual.valueVariance(from, to));
    if (level < TRUSTED * noise || Math.abs(peak - delay) > reach) {
      return Optional.empty();
    }
    double spread =
        Math.sqrt(residual.slopeVariance(middle, from, to))
            / (gain * residual.secondMoment(middle, from, to));
    double widening = Uncertainty.widening(residual.slopeDegrees(middle, from, to));
    return Optional.of(
        new Band(
            centre,
            peak,
            Measurement.COVERAGE_FACTOR * spread * widening,
            Decibels.ofFactor(Math.sqrt(level * level - noise * noise) / sent(low, high)),
            Uncertainty.levelDb(noise / level)));
  }

  /**
   * What a band's correlation would be if the path passed it unchanged. Of a reference that was
   * filtered by G the return's correlation holds |G| once and {@code auto} twice, so that it is the
   * geometric mean of {@code auto} and that of the whole reference, where |G| changes little within
   * an octave (derived).
   */
  private double sent(double low, double high) {
    return Math.sqrt(height(auto, low, high) * height(whole, low, high));
  }

  /**
   * The height at lag 0 of the envelope of a band, in cycles a sample: the filtered reference's
   * correlation may be cut otherwise than that of the whole one.
   */
  private static double height(CrossSpectrum correlation, double low, double high) {
    int transform = correlation.plan().transform();
    return correlation.envelopeAt(
        0, (int) Math.ceil(low * transform), (int) Math.floor(high * transform));
  }

  private double coarse(double delay, double reach, double step, int lowest, int highest) {
    double turn = 2 * Math.PI / cross.plan().transform();
    int together = Math.max(1, (int) (TURNED_TOGETHER / (turn * reach)));
    double[] sums = cross.summed(delay, lowest, highest, together);
    double best = delay;
    double most = 0;
    for (double offset = -reach; offset <= reach; offset += step) {
      double power = power(sums, turn * together * offset);
      if (power > most) {
        best = delay + offset;
        most = power;
      }
    }
    return best;
  }

  /** The squared magnitude of some complex numbers, each turned by so much more than the last. */
  private static double power(double[] sums, double turn) {
    Phasor phasor = new Phasor(turn, 0);
    double re = 0;
    double im = 0;
    for (int i = 0; i < sums.length; i += 2) {
      re += sums[i] * phasor.re() - sums[i + 1] * phasor.im();
      im += sums[i] * phasor.im() + sums[i + 1] * phasor.re();
      phasor.next();
    }
    return re * re + im * im;
  }

  /** Newton's method on the squared envelope. */
  private double climb(double start, int lowest, int highest) {
    double lag = start;
    for (int i = 0; i < STEPS; i++) {
      double step = cross.envelope(lag, lowest, highest).newtonStep();
      lag += step;
      if (Math.abs(step) < 1e-9) {
        break;
      }
    }
    return lag;
  }
}
