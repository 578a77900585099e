package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.path.ResidualTests;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Passband;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import java.util.List;
import java.util.Optional;

/**
 * The delay of a path by its own response. On a flat path, a pure delay and gain as far as can be
 * told, that is the correlation's peak. Any other path is a filter: its delay is when its response
 * is strongest ({@link StrongestMoment}), its pure delay what no filter explains ({@link
 * PureDelayFit}).
 *
 * @param flat whether the path is flat
 * @param certain whether chance alone explains how a flat path's bands scatter
 * @param lag the delay, in samples
 * @param standard the delay's standard uncertainty, in samples; 0 where the path is flat, since the
 *     correlation tells it
 * @param pure the pure delay of a path that is not flat, where it can be told
 * @param run the response in the run of bands that stand out of the noise
 * @param residual what a filter of the whole audio band leaves of the return; empty where the path
 *     is flat, or several arrivals are in the way
 */
public record PathDelay(
    boolean flat,
    boolean certain,
    double lag,
    double standard,
    Optional<PureDelayFit> pure,
    BandResponse run,
    Optional<ResidualTests> residual) {
  /** Fewer bands than this tell no filter from another. */
  private static final int FEWEST = 6;

  /** How often the lag is taken out anew and what the path leaves is looked at again. */
  private static final int ROTATIONS = 3;

  /**
   * The delay of the first of some arrivals.
   *
   * @param arrivals the arrivals that were found, the measured one first
   * @param residual what a fit of them left
   */
  public static PathDelay of(
      Spectra spectra, List<FittedArrival> arrivals, ResidualTests residual) {
    FittedArrival measured = arrivals.get(0);
    CrossSpectrum cross =
        spectra.cross().without(arrivals.subList(1, arrivals.size()), spectra.auto());
    BandResponse all = new BandReader(spectra, cross, residual).around(measured.lag());
    if (all.bands().size() < FEWEST) {
      return new PathDelay(true, true, measured.lag(), 0, Optional.empty(), all, Optional.empty());
    }
    BandResponse run = all.followed();
    if (FlatnessTest.holds(all, run, measured.gain())) {
      boolean certain = FlatnessTest.isCertain(all, run, measured.gain());
      return certain || run.bands().size() < FEWEST
          ? new PathDelay(true, certain, measured.lag(), 0, Optional.empty(), run, Optional.empty())
          : nearlyFlat(measured.lag(), run);
    }
    Optional<ResidualTests> left = Optional.empty();
    for (int i = 0; i < ROTATIONS; i++) {
      left = arrivals.size() == 1 ? Optional.of(left(spectra, all, arrivals)) : Optional.empty();
      ResidualTests noise = left.isPresent() ? left.get() : residual;
      all = new BandReader(spectra, cross, noise).around(strongest(run));
      run = all.followed();
    }
    if (run.bands().size() < FEWEST) {
      return new PathDelay(
          false, true, measured.lag(), run.anywhere(), Optional.empty(), run, left);
    }
    StrongestMoment moment = StrongestMoment.of(run);
    Optional<PureDelayFit> pure = PureDelayFit.of(run);
    if (arrivals.size() > 1 && pure.isPresent()) {
      BandReader whole = new BandReader(spectra, spectra.cross(), residual);
      boolean agree = agree(pure.get(), whole.around(run.lag()).followed());
      pure = agree ? pure : Optional.empty();
    }
    return new PathDelay(false, true, moment.lag(), moment.standard(), pure, run, left);
  }

  /**
   * Whether the pure delay beside other arrivals is that of the whole response, where that has one:
   * what was taken for an arrival may be a filter's ring, without which the filter is another.
   */
  private static boolean agree(PureDelayFit pure, BandResponse whole) {
    Optional<PureDelayFit> one =
        whole.bands().size() < FEWEST ? Optional.empty() : PureDelayFit.of(whole);
    return one.isEmpty()
        || Math.abs(one.get().lag() - pure.lag())
            < Measurement.COVERAGE_FACTOR * Math.hypot(one.get().standard(), pure.standard());
  }

  /**
   * A path that may be flat or not: its delay is that of a flat one, which may be off by as much as
   * the response is strongest elsewhere; its pure delay is that of a filter.
   */
  private static PathDelay nearlyFlat(double lag, BandResponse run) {
    StrongestMoment moment = StrongestMoment.of(run);
    double off = Math.abs(moment.lag() - lag);
    return new PathDelay(true, false, lag, off, PureDelayFit.of(run), run, Optional.empty());
  }

  private static double strongest(BandResponse run) {
    return run.bands().size() < FEWEST ? run.lag() : run.lag() + EnvelopePeak.of(run).offset();
  }

  private static ResidualTests left(
      Spectra spectra, BandResponse all, List<FittedArrival> arrivals) {
    return ResidualTests.of(spectra, new SmoothResponse(all), arrivals);
  }

  /**
   * The polarity of the path.
   *
   * @param gain the correlation's gain, whose sign tells it on a flat path
   */
  public Polarity polarity(double gain) {
    if (flat) {
      return certain ? Polarity.of(gain) : Polarity.UNDETERMINED;
    }
    return pure.map(PureDelayFit::polarity).orElse(Polarity.UNDETERMINED);
  }

  /** What the delay was read from, in Hz; empty where no band stands out of the noise. */
  public Optional<Passband> passband(double hertz) {
    return run.passband(hertz);
  }

  /** The octaves that come earliest and latest, where that is beyond chance. */
  public Optional<GroupDelays.Ends> dispersion() {
    return flat || run.bands().size() < FEWEST ? Optional.empty() : GroupDelays.ends(run);
  }
}
