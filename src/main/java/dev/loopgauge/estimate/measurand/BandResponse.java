package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.result.Passband;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A path's response in bands, with a lag taken out, and the run of them that can be followed.
 * {@link BandReader} makes them.
 */
public final class BandResponse {
  /**
   * A phase of a standard deviation of 0.2 radians can be followed from band to band, and ln of the
   * magnitude is not yet bent by the noise.
   */
  private static final double FOLLOWED = 0.04;

  /** A delay that not one band tells is open by this many samples, a second at 48 kHz. */
  private static final double FULLEST = 48_000;

  /** Nothing at all has a logarithm too, so that it can be weighed by nothing. */
  private static final double LEAST = 1e-100;

  private static final double HALF_OCTAVE = Math.log(2) / 2;

  /** So many bands in a row that can't be followed end the run of those that can. */
  private static final int ENDS = 3;

  /**
   * One band.
   *
   * @param omega its middle, in radians a sample
   * @param width how wide it is, in radians a sample
   * @param re the real part of the response, the lag taken out
   * @param im the imaginary part
   * @param variance of its phase in radians, and of the ln of its magnitude, from noise
   */
  record Band(double omega, double width, double re, double im, double variance) {
    double power() {
      return re * re + im * im;
    }

    double magnitude() {
      return Math.hypot(re, im);
    }

    double phase() {
      return Math.atan2(im, re);
    }
  }

  private final double lag;
  private final List<Band> bands;
  private final boolean startsInside;
  private final boolean endsInside;

  private BandResponse(double lag, List<Band> bands, boolean startsInside, boolean endsInside) {
    this.lag = lag;
    this.bands = List.copyOf(bands);
    this.startsInside = startsInside;
    this.endsInside = endsInside;
  }

  /** The bands of a whole audio band, low to high. */
  static BandResponse whole(double lag, List<Band> bands) {
    return new BandResponse(lag, bands, false, false);
  }

  /** The run of bands that stand out of the noise, around the one that is known best. */
  BandResponse followed() {
    List<Band> all = bands;
    int best = 0;
    for (int i = 1; i < all.size(); i++) {
      best = all.get(i).variance() < all.get(best).variance() ? i : best;
    }
    int from = best;
    for (int i = best, bad = 0; i >= 0 && bad < ENDS; i--) {
      bad = followed(all.get(i)) ? 0 : bad + 1;
      from = bad == 0 ? i : from;
    }
    int to = best;
    for (int i = best, bad = 0; i < all.size() && bad < ENDS; i++) {
      bad = followed(all.get(i)) ? 0 : bad + 1;
      to = bad == 0 ? i : to;
    }
    List<Band> run = new ArrayList<>();
    for (Band band : all.subList(from, to + 1)) {
      if (followed(band)) {
        run.add(band);
      }
    }
    return new BandResponse(lag, run, from > 0, to + 1 < all.size());
  }

  private static boolean followed(Band band) {
    return band.variance() < FOLLOWED;
  }

  /** The lag that is taken out, in samples. */
  double lag() {
    return lag;
  }

  /** The bands, low to high. */
  List<Band> bands() {
    return bands;
  }

  /** Whether the audio band goes on below what can be followed. */
  boolean startsInside() {
    return startsInside;
  }

  /** Whether it goes on above. */
  boolean endsInside() {
    return endsInside;
  }

  /** Some of the bands. */
  BandResponse part(int from, int to) {
    return new BandResponse(lag, bands.subList(from, to), startsInside, endsInside);
  }

  double[] omegas() {
    double[] omegas = new double[bands.size()];
    for (int i = 0; i < omegas.length; i++) {
      omegas[i] = bands.get(i).omega();
    }
    return omegas;
  }

  double[] variances() {
    double[] variances = new double[bands.size()];
    for (int i = 0; i < variances.length; i++) {
      variances[i] = bands.get(i).variance();
    }
    return variances;
  }

  double[] logMagnitudes() {
    double[] logs = new double[bands.size()];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(Math.max(LEAST, bands.get(i).magnitude()));
    }
    return logs;
  }

  /** The standard deviation of a delay that may be anywhere within one over the bands' width. */
  double anywhere() {
    double width = 0;
    for (Band band : bands) {
      width += band.width();
    }
    return Math.PI / Math.max(width, Math.PI / FULLEST) / Math.sqrt(3);
  }

  /** From the lowest to the highest frequency, in Hz; empty where there is no band. */
  Optional<Passband> passband(double hertz) {
    if (bands.isEmpty()) {
      return Optional.empty();
    }
    Band lowest = bands.get(0);
    Band highest = bands.get(bands.size() - 1);
    double perOmega = hertz / (2 * Math.PI);
    return Optional.of(
        new Passband(
            perOmega * (lowest.omega() - lowest.width() / 2),
            perOmega * (highest.omega() + highest.width() / 2)));
  }

  double[] widths() {
    double[] widths = new double[bands.size()];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = bands.get(i).width();
    }
    return widths;
  }

  /**
   * The phases in radians, followed from band to band from the one best known.
   *
   * @param near what phases are counted from: 0, or half a turn where the path inverts
   */
  double[] phases(double near) {
    double[] phases = new double[bands.size()];
    int best = 0;
    for (int i = 0; i < phases.length; i++) {
      phases[i] = bands.get(i).phase() - near;
      best = bands.get(i).variance() < bands.get(best).variance() ? i : best;
    }
    phases[best] = nearest(phases[best], 0);
    for (int i = best + 1; i < phases.length; i++) {
      phases[i] = nearest(phases[i], phases[i - 1]);
    }
    for (int i = best - 1; i >= 0; i--) {
      phases[i] = nearest(phases[i], phases[i + 1]);
    }
    return phases;
  }

  /** A phase less whole turns, so that it is as near to another as it can be. */
  static double nearest(double phase, double to) {
    return phase - 2 * Math.PI * Math.rint((phase - to) / (2 * Math.PI));
  }

  /**
   * How much each band counts within the run: fully inside, and fading over half an octave at
   * either end, so that an edge doesn't ring.
   */
  double[] taper() {
    int last = bands.size() - 1;
    double low = Math.log(bands.get(0).omega() - bands.get(0).width() / 2);
    double high = Math.log(bands.get(last).omega() + bands.get(last).width() / 2);
    double edge = Math.min(HALF_OCTAVE, (high - low) / 2);
    double[] taper = new double[bands.size()];
    for (int i = 0; i < taper.length; i++) {
      double at = Math.log(bands.get(i).omega());
      double inside = Math.max(0, Math.min(1, Math.min(at - low, high - at) / edge));
      taper[i] = 0.5 - 0.5 * Math.cos(Math.PI * inside);
    }
    return taper;
  }
}
