package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.path.DelayStep;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.Uncertainty;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Resampled;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.stats.Slope;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Readings of one recording whose clocks drift so fast that each is smeared by itself. The drift is
 * found as in a track, taken out of the return, and what then stands still is measured.
 */
public final class DriftingReadings {
  private static final int FEWEST = 3;

  /** A drift within the only reading is settled within this many steps. */
  private static final int STEPS = 4;

  private final List<Reading> readings;
  private final Samples ret;
  private final double maxDelaySeconds;

  /**
   * Some readings of one recording.
   *
   * @param ret the whole return
   */
  public DriftingReadings(List<Reading> readings, Samples ret, double maxDelaySeconds) {
    this.readings = readings;
    this.ret = ret;
    this.maxDelaySeconds = maxDelaySeconds;
  }

  /**
   * The delay in the middle of the recording; empty when there is no steady drift, or taking it out
   * makes nothing clearer.
   *
   * @param estimator what tells the delay of readings that stand still
   * @param plain what the readings came to without
   */
  public Optional<Estimate> estimate(Function<List<Reading>, Estimate> estimator, Estimate plain) {
    Optional<Slope> drift = readings.size() == 1 ? driftWithin(plain) : drift();
    return drift.isPresent()
            && estimator.apply(still(drift.get().value())) instanceof Estimate.Found found
            && isClearer(found, plain)
        ? Optional.of(drifting(found, drift.get(), clipped(plain)))
        : Optional.empty();
  }

  /** The readings with a drift taken out. */
  private List<Reading> still(double drift) {
    Samples steady = new Resampled(ret, middle(), drift);
    return readings.stream()
        .map(
            r ->
                new Reading(
                    r.reference(), new Window(steady, r.start(), r.ret().length()), r.start()))
        .toList();
  }

  /** Whether taking a drift out leaves less of the return than one delay does, and one step. */
  private boolean isClearer(Estimate.Found found, Estimate plain) {
    double drifting = found.measurement().signalToNoiseDb();
    if (plain instanceof Estimate.Found before) {
      return drifting > before.measurement().signalToNoiseDb();
    }
    boolean steps = plain.findings().stream().anyMatch(f -> f.code() == FindingCode.DROPOUT);
    return !steps || readings.size() > 1 || drifting > steppingDb();
  }

  /**
   * How clear the only reading is with a step taken out, in dB: one filter and one number more than
   * one delay has, as with a drift, so that the likelier of both is the one that leaves less.
   */
  private double steppingDb() {
    Spectra spectra = Spectra.of(readings, maxDelaySeconds);
    Fit fit = Fit.of(spectra, List.of(spectra.strongest()));
    Optional<Splice> splice = DelayStep.of(spectra, fit).map(DelayStep::splice);
    if (splice.isEmpty() || splice.get().later().isEmpty()) {
      return Double.NEGATIVE_INFINITY;
    }
    Reading whole = readings.get(0);
    int before = (int) Math.rint(fit.measured().lag());
    int after = before + (int) Math.rint(splice.get().later().getAsDouble());
    int at = splice.get().at() - whole.start() - before;
    List<Reading> sides =
        List.of(whole.alone(0, at, before), whole.alone(at, whole.reference().length(), after));
    Spectra still = Spectra.of(sides, maxDelaySeconds);
    return Fit.of(still, List.of(still.strongest())).signalToNoiseDb();
  }

  /**
   * The drift within the only reading, in samples a sample: roughly first, then from the fit. In
   * one sweep each moment has a frequency of its own, so that a path that delays low sounds more
   * than high ones looks like a drift: where it leaves one delay, only repeats can tell.
   */
  private Optional<Slope> driftWithin(Estimate plain) {
    Reading whole = readings.get(0);
    boolean oneDelay = plain instanceof Estimate.Found f && !f.measurement().ambiguous();
    if (oneDelay && Splice.isSweep(whole.reference())) {
      return Optional.empty();
    }
    double rough =
        new WindowDelay(whole.reference(), ret, whole.start(), maxDelaySeconds, false)
            .find(Optional.empty())
            .map(WindowDelay.Found::slope)
            .orElseGet(this::roughly);
    return settled(rough).filter(DriftGauge::standsOut);
  }

  /** The same about the strongest lag where a drift smears what would have to be trusted. */
  private double roughly() {
    Samples sent = readings.get(0).reference();
    int lag = (int) Math.rint(Spectra.of(readings, maxDelaySeconds).strongest().lag());
    Samples moved = new Window(ret, readings.get(0).start() + lag, sent.length());
    return SlopeSearch.of(sent, moved).perSample();
  }

  /**
   * A rough drift bettered until what is left of it is within its standard uncertainty, by the
   * secant method; empty where what is left stands out after all steps.
   */
  private Optional<Slope> settled(double rough) {
    double drift = rough;
    double perLeft = 1;
    Optional<Slope> left = left(drift);
    for (int i = 0; i < STEPS && left.filter(DriftingReadings::isOff).isPresent(); i++) {
      double step = perLeft * left.get().value();
      if (!(Math.abs(drift + step) < SlopeSearch.STEEPEST)) {
        break;
      }
      Optional<Slope> next = left(drift + step);
      perLeft = step / (left.get().value() - next.map(Slope::value).orElse(0.0));
      drift += step;
      left = next;
    }
    double bettered = drift;
    return left.filter(l -> !DriftGauge.standsOut(l))
        .map(l -> new Slope(bettered, l.fromNoise(), l.fromScatter(), l.degrees()));
  }

  private static boolean isOff(Slope left) {
    return Math.abs(left.value()) > left.fromScatter();
  }

  /** What is left of the drift in the only reading. */
  private Optional<Slope> left(double drift) {
    Spectra spectra = Spectra.of(still(drift), maxDelaySeconds);
    return DriftGauge.of(Fit.of(spectra, List.of(spectra.strongest())));
  }

  /** The drift from reading to reading, in samples a sample. */
  private Optional<Slope> drift() {
    if (readings.size() < FEWEST) {
      return Optional.empty();
    }
    int rate = ret.rate().hertz();
    List<TrackPoint> points = new ArrayList<>();
    Optional<WindowDelay.Found> last = Optional.empty();
    int lastStart = 0;
    for (Reading reading : readings) {
      int length = reading.reference().length();
      int since = reading.start() - lastStart;
      Optional<WindowDelay.Found> here =
          new WindowDelay(reading.reference(), ret, reading.start(), maxDelaySeconds, false)
              .find(last.map(found -> found.later(since)));
      double middle = (reading.start() + length / 2.0) / rate;
      here.ifPresent(f -> points.add(f.at(middle, ret.rate())));
      last = here.isPresent() ? here : last;
      lastStart = here.isPresent() ? reading.start() : lastStart;
    }
    return new TrackLine(0, points).steadyDrift().map(perSecond -> perSecond.times(1.0 / rate));
  }

  private double middle() {
    return readings.get(0).start() + length() / 2;
  }

  private double length() {
    Reading last = readings.get(readings.size() - 1);
    return (double) last.start() + last.reference().length() - readings.get(0).start();
  }

  /** What was found of clipping, which stands flat only in the return as it was recorded. */
  private static List<Finding> clipped(Estimate plain) {
    return plain.findings().stream().filter(f -> f.code() == FindingCode.CLIPPED).toList();
  }

  private Estimate drifting(Estimate.Found found, Slope slope, List<Finding> clipped) {
    Measurement m = found.measurement();
    double drift = slope.value();
    double uncertainty =
        new Uncertainty()
            .with(m.uncertaintySamples() / Measurement.COVERAGE_FACTOR)
            .with(Math.abs(drift) * length() / Math.sqrt(12))
            .expanded();
    ClockDrift takenOut = ClockDrift.of(slope);
    ClockDrift all = m.clockDrift().map(takenOut::plus).orElse(takenOut);
    List<Finding> findings = new ArrayList<>(clipped);
    findings.addAll(found.findings());
    findings.removeIf(finding -> finding.code() == FindingCode.CLOCKS_NOT_LOCKED);
    findings.add(DriftFindings.drifting(all));
    return new Estimate.Found(
        m.ofReadings(
            m.repeats(),
            // Resampled about the middle, the arrival that is late by d came d / (1 + drift) late.
            new Latency(m.delay().samples() * (1 + drift), m.delay().rate()),
            uncertainty,
            Optional.of(all),
            m.ambiguous()),
        findings);
  }
}
