package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.DelayLine;
import dev.loopgauge.estimate.drift.DriftFindings;
import dev.loopgauge.estimate.integrity.Clipping;
import dev.loopgauge.estimate.integrity.GainModulation;
import dev.loopgauge.estimate.integrity.IntegrityFindings;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.integrity.ZeroRuns;
import dev.loopgauge.estimate.measurand.GroupDelays;
import dev.loopgauge.estimate.measurand.PathDelay;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.ResidualTests;
import dev.loopgauge.estimate.path.Uncertainty;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** What a fit says: the measurement, its uncertainty, and what to know besides. */
final class Conclusion {
  /** Arrivals as alike in level as this could each be meant. */
  private static final double ALIKE_DB = 6;

  /** A return louder than this against its reference makes the reference doubtful. */
  private static final double LOUDEST_DB = 20;

  /** Delays are told to this, in ms. */
  private static final double TOLD_MS = 0.01;

  /** More lost sound than this share of the reference leaves no detection in the rest. */
  private static final double HARMLESS_LOSS = 0.1;

  private final Spectra spectra;
  private final Fit fit;
  private final PathDelay path;

  /** What the path's response in bands leaves, where that is less than the fitted taps leave. */
  private final Optional<ResidualTests> byBands;

  private final ResidualTests left;
  private final ArrivalChoice choice;
  private final boolean whole;
  private final SampleRate rate;
  private final double[] delays;
  private final Optional<Clipping> clipping;

  /**
   * The conclusion from a trusted fit.
   *
   * @param path what the path's own response says of the delay
   * @param whole whether a reading in which a block was lost or repeated is refused
   * @param clipping what clipped samples do to it, if there are any
   */
  Conclusion(
      Spectra spectra,
      Fit fit,
      PathDelay path,
      ArrivalChoice choice,
      boolean whole,
      Optional<Clipping> clipping) {
    this.spectra = spectra;
    this.path = path;
    this.byBands = path.residual().filter(bands -> leavesLess(bands, fit.residualTests()));
    this.left = byBands.orElse(fit.residualTests());
    this.fit = fit;
    this.choice = choice;
    this.whole = whole;
    this.rate = spectra.rate();
    this.delays = delays();
    this.clipping = clipping;
  }

  private static boolean leavesLess(ResidualTests one, ResidualTests other) {
    return one.residual().residualEnergy() < other.residual().residualEnergy();
  }

  /** The estimate. */
  Estimate estimate() {
    List<Finding> findings = new ArrayList<>();
    clipping.ifPresent(c -> findings.add(IntegrityFindings.clipped(c.share(), c.spoils())));
    Optional<DelayLine> line = line();
    Optional<DelayLine> drift = line.filter(DelayLine::drifts);
    drift.ifPresent(d -> findings.add(DriftFindings.drifting(d.drift())));
    lost().ifPresent(findings::add);
    splice().ifPresent(splice -> findings.add(IntegrityFindings.torn(splice, whole, rate)));
    Optional<FittedArrival> rival = rival();
    boolean open = choice == ArrivalChoice.UNDECIDED;
    rival.ifPresent(
        other -> findings.add(ArrivalFindings.twoArrivals(fit.measured(), other, open, rate)));
    double level = Decibels.ofFactor(fit.measured().gain());
    if (level > LOUDEST_DB) {
      // What such a reference hears besides would look like a level that moves.
      findings.add(ArrivalFindings.louderThanReference(level));
    } else {
      gainModulation().ifPresent(byDb -> findings.add(IntegrityFindings.gainModulation(byDb)));
    }
    dispersion().ifPresent(ends -> findings.add(ArrivalFindings.dispersive(ends, rate)));
    if (path.polarity(fit.measured().gain()) == Polarity.INVERTED) {
      findings.add(ArrivalFindings.inverted());
    }
    if (findings.stream().anyMatch(Finding::refuses)) {
      return new Estimate.Refused(findings);
    }
    return new Estimate.Found(measurement(line, rival.isPresent() && open), findings);
  }

  /**
   * How the path delays frequencies differently, where that can be heard of: beyond what the
   * delay's uncertainty holds, by more than is printed, and by a filter, not by several arrivals.
   */
  private Optional<GroupDelays.Ends> dispersion() {
    double least =
        Math.max(Measurement.COVERAGE_FACTOR * path.standard(), TOLD_MS * rate.hertz() / 1000);
    return fit.copies().size() > 1
        ? Optional.empty()
        : path.dispersion().filter(ends -> ends.apart() > least);
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
        Decibels.ofFactor(measured.gain()),
        fit.levelUncertaintyDb() + clipping.map(Clipping::movedDb).orElse(0.0),
        fit.signalToNoiseDb(),
        Method.REFERENCED,
        spectra.readings().size(),
        line.map(DelayLine::drift),
        arrivals(),
        missing(),
        fit.bands(),
        Optional.of(fit.response()),
        ambiguous);
  }

  /** On a flat path all of its delay is pure. */
  private Optional<PureDelay> pure(double uncertainty) {
    return path.flat()
        ? Optional.of(new PureDelay(path.lag(), uncertainty))
        : path.pure().map(p -> new PureDelay(p.lag(), beside(p.standard(), uncertainty)));
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
    double clipped = clipping.map(c -> c.standard(fit.noiseUncertainty())).orElse(0.0);
    Uncertainty uncertainty =
        new Uncertainty().with(path.flat() ? fit.dispersion() : path.standard()).with(clipped);
    Optional<DelayLine> drift = line.filter(DelayLine::drifts);
    if (drift.isPresent()) {
      double moved = Math.abs(drift.get().slope().value()) * duration();
      return uncertainty
          .with(Math.max(drift.get().scatter(), ofOne) / Math.sqrt(readings))
          .with(moved / Math.sqrt(12))
          .expanded();
    }
    return uncertainty.with(Uncertainty.ofMean(delays, ofOne)).expanded();
  }

  private Optional<DelayLine> line() {
    double[] times = spectra.readings().stream().mapToDouble(Reading::start).toArray();
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
    return InParallel.map(spectra.each(), c -> PeakSearch.refine(c, near).lag()).stream()
        .mapToDouble(lag -> lag)
        .toArray();
  }

  private List<Arrival> arrivals() {
    List<Arrival> arrivals = new ArrayList<>();
    for (FittedArrival copy : fit.copies()) {
      boolean measured = arrivals.isEmpty();
      double lag = measured ? path.lag() : copy.lag();
      Polarity polarity = measured ? path.polarity(copy.gain()) : Polarity.of(copy.gain());
      arrivals.add(new Arrival(lag, Decibels.ofFactor(copy.gain()), polarity));
    }
    return arrivals;
  }

  private Optional<FittedArrival> rival() {
    double level = Decibels.ofFactor(fit.measured().gain());
    return fit.copies().stream()
        .skip(1)
        .filter(c -> Decibels.ofFactor(c.gain()) > level - ALIKE_DB)
        .findFirst();
  }

  /** By how much the path's level moves, in dB, if so. A handful of frequencies can't tell. */
  private OptionalDouble gainModulation() {
    return fit.isNarrow() ? OptionalDouble.empty() : GainModulation.of(left.lostSound());
  }

  /** Where a reading splices, which no filter on both sides explains. */
  private Optional<Splice> splice() {
    return byBands.isEmpty()
        ? fit.splice()
        : fit.splice().filter(s -> left.splice(spectra.readings(), fit.copies()).isPresent());
  }

  private Optional<Finding> lost() {
    List<LostSound.Gap> gaps = gaps();
    if (gaps.isEmpty()) {
      return Optional.empty();
    }
    double lost = gaps.stream().mapToDouble(LostSound.Gap::length).sum();
    double whole = spectra.readings().stream().mapToDouble(r -> r.reference().length()).sum();
    return Optional.of(
        IntegrityFindings.gap(gaps.get(0), gaps.size() - 1, lost > HARMLESS_LOSS * whole, rate));
  }

  /**
   * Digital silence where there should be sound proves a loss; else where the arrivals are missing.
   */
  private List<LostSound.Gap> gaps() {
    List<LostSound.Gap> zeros =
        spectra.readings().stream()
            .flatMap(reading -> ZeroRuns.of(reading, fit.measured()).stream())
            .toList();
    return zeros.isEmpty() ? left.gaps() : zeros;
  }

  private List<MissingSound> missing() {
    return Stream.concat(gaps().stream(), splice().flatMap(Splice::lost).stream())
        .sorted(Comparator.comparingInt(LostSound.Gap::from))
        .map(gap -> new MissingSound(seconds(gap.from()), 1000 * seconds(gap.length())))
        .toList();
  }

  private double seconds(int samples) {
    return (double) samples / rate.hertz();
  }
}
