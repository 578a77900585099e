package dev.loopgauge.estimate;

import dev.loopgauge.estimate.detection.Detection;
import dev.loopgauge.estimate.drift.DelayLine;
import dev.loopgauge.estimate.drift.DriftFindings;
import dev.loopgauge.estimate.integrity.Clipping;
import dev.loopgauge.estimate.integrity.IntegrityFindings;
import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.measurand.GroupDelays;
import dev.loopgauge.estimate.measurand.PathDelay;
import dev.loopgauge.estimate.measurand.PureDelayFit;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.NoisyLevel;
import dev.loopgauge.estimate.path.Uncertainty;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a fit says: the measurement, its uncertainty, and what to know besides. */
final class Conclusion {
  /** Arrivals as alike in level as this could each be meant. */
  private static final double ALIKE_DB = 6;

  /** Delays are told to this, in ms. */
  private static final double TOLD_MS = 0.01;

  private final Spectra spectra;
  private final Fit fit;
  private final PathDelay path;

  private final Losses losses;
  private final NoisyLevel level;
  private final ArrivalChoice choice;
  private final boolean whole;
  private final SampleRate rate;
  private final double[] delays;
  private final Optional<Clipping> clipping;

  /**
   * The conclusion from a trusted fit.
   *
   * @param path what the path's own response says of the delay
   * @param losses what the return lacks
   * @param whole whether a reading in which a block was lost or repeated is refused
   * @param clipping what clipped samples do to it, if there are any
   */
  Conclusion(
      Spectra spectra,
      Fit fit,
      PathDelay path,
      Losses losses,
      ArrivalChoice choice,
      boolean whole,
      Optional<Clipping> clipping) {
    this.spectra = spectra;
    this.path = path;
    this.losses = losses;
    this.level = fit.level(Detection.leastTrusted(spectra, fit));
    this.fit = fit;
    this.choice = choice;
    this.whole = whole;
    this.rate = spectra.rate();
    this.delays = delays();
    this.clipping = clipping;
  }

  /** The estimate. */
  Estimate estimate() {
    Optional<DelayLine> line = line();
    Optional<FittedArrival> rival = rival();
    boolean open = choice == ArrivalChoice.UNDECIDED;
    List<Finding> findings = findings(line, rival, open);
    for (Finding finding : findings) {
      if (finding.refuses()) {
        return new Estimate.Refused(findings);
      }
    }
    return new Estimate.Found(measurement(line, rival.isPresent() && open), findings);
  }

  private List<Finding> findings(
      Optional<DelayLine> line, Optional<FittedArrival> rival, boolean open) {
    List<Finding> findings = new ArrayList<>();
    if (clipping.isPresent()) {
      findings.add(IntegrityFindings.clipped(clipping.get().share(), clipping.get().spoils()));
    }
    if (drifts(line)) {
      findings.add(DriftFindings.drifting(line.get().drift()));
    }
    Optional<Finding> gap = losses.gap();
    if (gap.isPresent()) {
      findings.add(gap.get());
    }
    Optional<Splice> splice = losses.splice();
    if (splice.isPresent()) {
      findings.add(IntegrityFindings.spliced(splice.get(), whole, rate));
    }
    if (rival.isPresent()) {
      findings.add(ArrivalFindings.twoArrivals(fit.measured(), rival.get(), open, rate));
    }
    if (level.db() > Detection.FAINT_DB) {
      // What such a reference hears besides would look like a level that moves.
      findings.add(ArrivalFindings.louderThanReference(level.db()));
    } else {
      losses.level().ifPresent(findings::add);
    }
    Optional<GroupDelays.Ends> ends = dispersion();
    if (ends.isPresent()) {
      findings.add(ArrivalFindings.dispersive(ends.get(), rate));
    }
    if (path.polarity(fit.measured().gain()) == Polarity.INVERTED) {
      findings.add(ArrivalFindings.inverted());
    }
    return findings;
  }

  private static boolean drifts(Optional<DelayLine> line) {
    return line.isPresent() && line.get().drifts();
  }

  /**
   * How the path delays frequencies differently, where that can be heard of: beyond what the
   * delay's uncertainty holds, by more than is printed, and by a filter, not by several arrivals.
   */
  private Optional<GroupDelays.Ends> dispersion() {
    double least =
        Math.max(Measurement.COVERAGE_FACTOR * path.standard(), TOLD_MS * rate.hertz() / 1000);
    Optional<GroupDelays.Ends> ends = path.dispersion();
    boolean told = fit.arrivals().size() == 1 && ends.isPresent() && ends.get().apart() > least;
    return told ? ends : Optional.empty();
  }

  private Measurement measurement(Optional<DelayLine> line, boolean ambiguous) {
    FittedArrival measured = fit.measured();
    double uncertainty = uncertainty(line);
    return new Measurement(
        new Latency(path.lag(), rate),
        uncertainty,
        pure(uncertainty),
        path.passband(rate.hertz()),
        path.polarity(measured.gain()),
        level.db(),
        level.uncertaintyDb() + (clipping.isPresent() ? clipping.get().movedDb() : 0),
        fit.signalToNoiseDb(),
        Method.REFERENCED,
        spectra.readings().size(),
        line.isPresent() ? Optional.of(line.get().drift()) : Optional.empty(),
        arrivals(),
        losses.missing(),
        fit.bands(),
        Optional.of(fit.response()),
        ambiguous);
  }

  /** On a flat path all of its delay is pure. */
  private Optional<PureDelay> pure(double uncertainty) {
    if (path.flat() && path.certain()) {
      return Optional.of(new PureDelay(path.lag(), uncertainty));
    }
    if (path.pure().isEmpty()) {
      return Optional.empty();
    }
    PureDelayFit pure = path.pure().get();
    return Optional.of(new PureDelay(pure.lag(), beside(pure.standard(), uncertainty)));
  }

  /** The expanded uncertainty of a pure delay with what the readings' scatter adds. */
  private double beside(double standard, double uncertainty) {
    double path = Measurement.COVERAGE_FACTOR * this.path.standard();
    double scatter = Math.max(0, uncertainty * uncertainty - path * path);
    return Math.hypot(Measurement.COVERAGE_FACTOR * standard, Math.sqrt(scatter));
  }

  private double uncertainty(Optional<DelayLine> line) {
    int readings = spectra.readings().size();
    double ofOne = fit.noiseUncertainty() * Math.sqrt(readings);
    double clipped = clipping.isPresent() ? clipping.get().standard(fit.noiseUncertainty()) : 0;
    Uncertainty uncertainty =
        new Uncertainty()
            .with(path.flat() ? fit.dispersion() : 0)
            .with(path.standard())
            .with(clipped);
    if (drifts(line)) {
      double moved = Math.abs(line.get().slope().value()) * duration();
      return uncertainty
          .with(Math.max(line.get().scatter(), ofOne) / Math.sqrt(readings))
          .with(moved / Math.sqrt(12))
          .expanded();
    }
    return uncertainty.with(Uncertainty.ofMean(delays, ofOne)).expanded();
  }

  private Optional<DelayLine> line() {
    double[] times = new double[spectra.readings().size()];
    for (int i = 0; i < times.length; i++) {
      times[i] = spectra.readings().get(i).start();
    }
    boolean apart = times.length > 2 && times[times.length - 1] > times[0];
    return apart
        ? Optional.of(
            DelayLine.through(times, delays, fit.noiseUncertainty() * Math.sqrt(times.length)))
        : Optional.empty();
  }

  /** From the start of the first reading to the end of the last, in samples. */
  private double duration() {
    Reading last = spectra.readings().get(spectra.readings().size() - 1);
    return (double) last.start() + last.reference().length() - spectra.readings().get(0).start();
  }

  /** The delay of each reading by itself. */
  private double[] delays() {
    if (spectra.each().size() == 1) {
      return new double[] {fit.measured().lag()};
    }
    double near = fit.measured().lag();
    List<Double> found = InParallel.map(spectra.each(), c -> PeakSearch.refine(c, near).lag());
    double[] lags = new double[found.size()];
    for (int i = 0; i < lags.length; i++) {
      lags[i] = found.get(i);
    }
    return lags;
  }

  private List<Arrival> arrivals() {
    List<Arrival> arrivals = new ArrayList<>();
    for (FittedArrival arrival : fit.arrivals()) {
      boolean measured = arrivals.isEmpty();
      double lag = measured ? path.lag() : arrival.lag();
      Polarity polarity = measured ? path.polarity(arrival.gain()) : Polarity.of(arrival.gain());
      double db = measured ? level.db() : Decibels.ofFactor(arrival.gain());
      arrivals.add(new Arrival(lag, db, polarity));
    }
    return arrivals;
  }

  private Optional<FittedArrival> rival() {
    double level = Decibels.ofFactor(fit.measured().gain());
    for (FittedArrival other : fit.arrivals().subList(1, fit.arrivals().size())) {
      if (Decibels.ofFactor(other.gain()) > level - ALIKE_DB) {
        return Optional.of(other);
      }
    }
    return Optional.empty();
  }
}
