package dev.loopgauge.estimate;

import dev.loopgauge.estimate.detection.Detection;
import dev.loopgauge.estimate.detection.DetectionFindings;
import dev.loopgauge.estimate.drift.DriftGauge;
import dev.loopgauge.estimate.drift.DriftingReadings;
import dev.loopgauge.estimate.drift.HomogeneityTest;
import dev.loopgauge.estimate.drift.InhomogeneousReadings;
import dev.loopgauge.estimate.integrity.Clipping;
import dev.loopgauge.estimate.integrity.IntegrityFindings;
import dev.loopgauge.estimate.measurand.PathDelay;
import dev.loopgauge.estimate.measurand.RippleTest;
import dev.loopgauge.estimate.path.ClippingEffect;
import dev.loopgauge.estimate.path.DelayStep;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.PreFilter;
import dev.loopgauge.estimate.path.Residual;
import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.KeptTransforms;
import dev.loopgauge.estimate.spectrum.PartialOverlap;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.stats.Slope;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds how much later a return is than its reference, and says how sure that is, or why it can't
 * be known.
 *
 * <p>The way: the correlation of both ({@link CrossSpectrum}) is largest at the delay ({@link
 * PeakSearch}); what the delayed and filtered reference leaves of the return ({@link Residual}) is
 * the noise, which gives the uncertainty; a peak that unrelated sound could give is refused ({@link
 * Detection}).
 */
public final class DelayEstimator {
  private final double maxDelaySeconds;
  private final ArrivalChoice choice;

  /**
   * An estimator.
   *
   * @param maxDelaySeconds how far to look either way, above 0 and at most {@value
   *     LongestDelay#SECONDS}
   * @param choice which arrival is measured where there are several
   * @throws IllegalArgumentException when out of range
   */
  public DelayEstimator(double maxDelaySeconds, ArrivalChoice choice) {
    this.maxDelaySeconds = LongestDelay.checked(maxDelaySeconds);
    this.choice = choice;
  }

  /** An estimator that leaves the choice between like arrivals open. */
  public DelayEstimator(double maxDelaySeconds) {
    this(maxDelaySeconds, ArrivalChoice.UNDECIDED);
  }

  /**
   * The delay of a path from one or more readings of it.
   *
   * @param readings at least one, all at one rate
   * @throws IllegalArgumentException when there is none or the rates differ
   */
  public Estimate estimate(List<Reading> readings) {
    return estimate(readings, choice == ArrivalChoice.UNDECIDED);
  }

  /** The delay of one of several readings that disagree: a block lost in it is why, no refusal. */
  private Estimate oneOfSeveral(Reading reading) {
    return estimate(List.of(reading), false);
  }

  private Estimate estimate(List<Reading> readings, boolean whole) {
    return read(readings, whole, Optional.empty()).estimate();
  }

  /**
   * What some readings came to, the fit behind it where the readings agreed, the share of the
   * return that is clipped, if it is, and what a return that was placed lacks.
   */
  private record Read(
      Estimate estimate, Optional<Fit> fit, OptionalDouble clipped, Optional<Losses> losses) {
    static Read without(Estimate estimate) {
      return new Read(estimate, Optional.empty(), OptionalDouble.empty(), Optional.empty());
    }

    /** No number, for clipping, if there is, and for one reason more. */
    static Read refused(Optional<Fit> fit, OptionalDouble clipped, Finding why) {
      List<Finding> findings = new ArrayList<>();
      if (clipped.isPresent()) {
        findings.add(IntegrityFindings.clipped(clipped.getAsDouble(), false));
      }
      findings.add(why);
      return new Read(new Estimate.Refused(findings), fit, clipped, Optional.empty());
    }

    /** Whether the delay steps within a reading. */
    boolean steps(Spectra spectra) {
      return losses.isPresent()
          ? losses.get().splice().isPresent()
          : fit.isPresent() && DelayStep.of(spectra, fit.get()).isPresent();
    }
  }

  private Read read(List<Reading> readings, boolean whole, Optional<KeptTransforms> kept) {
    if (!areOfOneRate(readings)) {
      throw new IllegalArgumentException(
          "readings must be of one rate, and at least one, not " + readings.size());
    }
    Optional<Finding> silent = silent(readings);
    if (silent.isPresent()) {
      return Read.without(new Estimate.Refused(List.of(silent.get())));
    }
    Spectra spectra = Spectra.of(readings, maxDelaySeconds, kept);
    return new HomogeneityTest(spectra).holds()
        ? together(spectra, whole)
        : Read.without(new InhomogeneousReadings(this::oneOfSeveral).estimate(readings));
  }

  private static boolean areOfOneRate(List<Reading> readings) {
    for (Reading reading : readings) {
      if (!reading.rate().equals(readings.get(0).rate())) {
        return false;
      }
    }
    return !readings.isEmpty();
  }

  /**
   * The delay of a return against its reference, from recordings of any length that started at the
   * same instant.
   *
   * @throws IllegalArgumentException as {@link Reading}
   */
  public Estimate estimate(Samples reference, Samples ret) {
    return estimate(Segments.of(reference, maxDelaySeconds), ret);
  }

  /**
   * The same for a reference of which the segments to be read are known.
   *
   * @throws IllegalArgumentException as {@link Reading}
   */
  public Estimate estimate(Segments segments, Samples ret) {
    List<Reading> readings = segments.against(ret);
    Read plain = read(readings, choice == ArrivalChoice.UNDECIDED, segments.kept());
    return mayDrift(plain)
        ? new DriftingReadings(readings, ret, maxDelaySeconds)
            .estimate(this::estimate, plain.estimate())
            .orElse(plain.estimate())
        : plain.estimate();
  }

  private static boolean mayDrift(Read plain) {
    if (plain.losses().isPresent() && plain.losses().get().isStepAndNoDrift()) {
      return false;
    }
    if (!(plain.estimate() instanceof Estimate.Found found)) {
      return !isRefusedAsClipped(plain.estimate());
    }
    if (found.measurement().ambiguous()) {
      return true;
    }
    return plain.fit().isPresent()
        && (DriftGauge.isSmeared(found.measurement()) || driftStandsOut(plain.fit().get()));
  }

  private static boolean driftStandsOut(Fit fit) {
    Optional<Slope> drift = DriftGauge.of(fit);
    return drift.isPresent() && DriftGauge.standsOut(drift.get());
  }

  private static boolean isRefusedAsClipped(Estimate estimate) {
    for (Finding finding : estimate.findings()) {
      if (finding.code() == FindingCode.CLIPPED && finding.refuses()) {
        return true;
      }
    }
    return false;
  }

  private static Optional<Finding> silent(List<Reading> readings) {
    for (Reading reading : readings) {
      if (Loudness.isSilence(reading.reference())) {
        return Optional.of(DetectionFindings.silentReference());
      }
      if (Loudness.isSilence(reading.ret())) {
        return Optional.of(DetectionFindings.silentReturn());
      }
    }
    return Optional.empty();
  }

  private Read together(Spectra given, boolean whole) {
    PartialOverlap.Cut cut = given.recordedOf(given.strongest());
    if (cut.lost() > 0 && !cut.leavesTooLittle() && !DelayStep.isInSweep(given)) {
      Spectra recorded = given.ofParts(cut.readings());
      Read read = fitted(recorded, whole);
      // A splice is told by all that is there: beside it sound goes on as beside an edge.
      if (!read.steps(recorded)) {
        return read;
      }
    }
    Read read = fitted(given, whole);
    return cut.leavesTooLittle() && read.estimate() instanceof Estimate.Found
        ? Read.refused(read.fit(), read.clipped(), DetectionFindings.tooShort())
        : read;
  }

  private Read fitted(Spectra spectra, boolean whole) {
    Fit first = Fit.of(spectra, List.of(spectra.strongest()));
    Detection detection = new Detection(spectra, first);
    if (detection.isTooNarrow() && !DelayStep.isInSweep(spectra)) {
      Optional<Read> narrow = narrow(spectra, first, whole);
      if (narrow.isPresent()) {
        return narrow.get();
      }
    }
    Optional<Finding> refusal = detection.refusal();
    if (refusal.isPresent()) {
      Optional<Finding> spliced =
          DelayStep.of(spectra, first)
              .map(s -> IntegrityFindings.spliced(s.splice(), true, spectra.rate()));
      return Read.refused(
          Optional.of(first),
          share(ClippingEffect.of(spectra, first).map(ClippingEffect::share)),
          spliced.orElse(refusal.get()));
    }
    List<FittedArrival> arrivals = arrivals(spectra, first);
    choose(arrivals);
    Fit all = arrivals.size() == 1 ? first : Fit.of(spectra, arrivals);
    Fit fit = all.isPeak() ? all : first;
    Optional<Clipping> clipping = clipping(spectra, first, fit);
    PathDelay path = PathDelay.of(spectra, fit.arrivals(), fit.residualTests());
    return concluded(spectra, fit, path, whole, clipping, Optional.of(fit));
  }

  /** The same for an arrival in few frequencies, from what of the references the path passes. */
  private Optional<Read> narrow(Spectra spectra, Fit first, boolean whole) {
    PreFilter filter = new PreFilter(spectra, first);
    // A band too narrow for the lags searched tells none of them from another.
    if (2L * filter.reach() > spectra.searchLag()) {
      return Optional.empty();
    }
    Spectra passed = Spectra.of(filter.readings(), maxDelaySeconds, filter.reach());
    Fit fit = Fit.ofFiltered(passed, List.of(passed.strongest()), spectra.auto());
    if (!new Detection(passed, fit).holdsNarrow()) {
      return Optional.empty();
    }
    Optional<Clipping> clipping = clipping(spectra, first);
    PathDelay path = PathDelay.of(spectra, first.arrivals(), first.residualTests());
    return Optional.of(concluded(passed, fit, path, whole, clipping, Optional.empty()));
  }

  private Read concluded(
      Spectra spectra,
      Fit fit,
      PathDelay path,
      boolean whole,
      Optional<Clipping> clipping,
      Optional<Fit> kept) {
    Losses losses = new Losses(spectra, fit, path);
    Estimate estimate =
        new Conclusion(spectra, fit, path, losses, choice, whole, clipping).estimate();
    return new Read(
        estimate,
        kept,
        clipping.isPresent() ? OptionalDouble.of(clipping.get().share()) : OptionalDouble.empty(),
        kept.isPresent() ? Optional.of(losses) : Optional.empty());
  }

  /** What clipped samples do to some fits, the worst of them. */
  private static Optional<Clipping> clipping(Spectra spectra, Fit... fits) {
    Optional<Clipping> worst = Optional.empty();
    for (Fit fit : new LinkedHashSet<>(List.of(fits))) {
      Optional<ClippingEffect> test = ClippingEffect.of(spectra, fit);
      if (test.isPresent()) {
        Clipping clipping = test.get().clipping();
        worst = Optional.of(worst.isPresent() ? worst.get().or(clipping) : clipping);
      }
    }
    return worst;
  }

  private static OptionalDouble share(Optional<Double> share) {
    return share.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  /** The arrivals of a fit, but for what is a filter's ring. */
  private static List<FittedArrival> arrivals(Spectra spectra, Fit first) {
    List<FittedArrival> arrivals = new ArrayList<>(first.allArrivals());
    if (arrivals.size() > 1 && !RippleTest.ripple(spectra, arrivals, first.residualTests())) {
      arrivals.subList(1, arrivals.size()).clear();
    }
    return arrivals;
  }

  /** Puts the arrival to be measured first. */
  private void choose(List<FittedArrival> arrivals) {
    if (choice == ArrivalChoice.FIRST) {
      arrivals.sort(Comparator.comparingDouble(FittedArrival::lag));
    }
  }
}
