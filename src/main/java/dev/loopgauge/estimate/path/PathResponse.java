package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Phasor;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.ToeplitzSystem;
import java.util.ArrayList;
import java.util.List;

/**
 * What the path does to the sound, as a filter: around the arrival the least-squares fit of the
 * return by the reference, shifted by the delay and filtered; further off single arrivals. A pure
 * delay and gain fits as one tap; a path with filters or a loudspeaker in it as a few more.
 *
 * <p>The fit solves the normal equations sum over j of Rxx(i - j) h[j] = Rxy(delay + i), i and j
 * from -reach to +reach, with one part in 10^9 added to Rxx(0) so that empty bands stay harmless
 * (L. Ljung, "System Identification", section 4.2, from memory).
 *
 * <p>Of a reference cut out of sound that goes on, Rxx(-k) is not quite Rxx(k). The arrival's share
 * of that is its gain times half the difference, and is taken off Rxy; then the even half of Rxx
 * does (derived: exact for a pure delay, to the first order for a filter).
 */
final class PathResponse implements PathModel {
  private static final double RIDGE = 1e-9;

  private final double delay;
  private final double[] taps;
  private final List<FittedArrival> far;
  private final double explained;

  private PathResponse(double delay, double[] taps, List<FittedArrival> far, double explained) {
    this.delay = delay;
    this.taps = taps;
    this.far = far;
    this.explained = explained;
  }

  /**
   * Fits the filter around the first of some arrivals.
   *
   * @param reach how many taps lie on either side of the first arrival; other arrivals as near as
   *     that are left to them
   */
  static PathResponse fit(
      CrossSpectrum cross, CrossSpectrum auto, List<FittedArrival> arrivals, int reach) {
    double delay = arrivals.get(0).lag();
    List<FittedArrival> far = new ArrayList<>();
    for (FittedArrival arrival : arrivals) {
      if (Math.abs(arrival.lag() - delay) > reach) {
        far.add(arrival);
      }
    }
    double[] b = cross.without(far, auto).lagsFrom(delay - reach, 2 * reach + 1);
    double[] around = auto.lagsFrom(-2 * reach, 4 * reach + 1);
    double[] even = new double[2 * reach + 1];
    for (int i = 0; i < even.length; i++) {
      even[i] = (around[2 * reach + i] + around[2 * reach - i]) / 2;
    }
    for (int i = -reach; i <= reach; i++) {
      double odd = (around[2 * reach + i] - around[2 * reach - i]) / 2;
      b[reach + i] -= arrivals.get(0).gain() * odd;
    }
    even[0] *= 1 + RIDGE;
    double[] taps = ToeplitzSystem.solve(even, b);
    double explained = 0;
    for (int i = 0; i < taps.length; i++) {
      explained += taps[i] * b[i];
    }
    return new PathResponse(delay, taps, far, explained);
  }

  /** The energy of the return that the filter explains. */
  double explained() {
    return explained;
  }

  @Override
  public int taps() {
    return taps.length;
  }

  @Override
  public double delay() {
    return delay;
  }

  @Override
  public double[] spectrum(RealFft fft) {
    double[] packed = new double[fft.length()];
    for (int i = 0; i < taps.length; i++) {
      packed[Math.floorMod(i - taps.length / 2, packed.length)] = taps[i];
    }
    fft.forward(packed);
    addFarArrivals(packed);
    return packed;
  }

  private void addFarArrivals(double[] packed) {
    for (FittedArrival arrival : far) {
      double step = -2 * Math.PI * (arrival.lag() - delay) / packed.length;
      Phasor phasor = new Phasor(step, 1);
      packed[0] += arrival.gain();
      for (int i = 2; i < packed.length; i += 2) {
        packed[i] += arrival.gain() * phasor.re();
        packed[i + 1] += arrival.gain() * phasor.im();
        phasor.next();
      }
    }
  }
}
