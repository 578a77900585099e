package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Optional;

/**
 * The delay within one window of a track: near where it was before, or anywhere.
 *
 * <p>A drift that smears the correlation is taken out first ({@link Retimed}), by the drift of the
 * window before or, where there was none, by a search ({@link SlopeSearch}).
 */
final class WindowDelay {
  /** How far from the last delay the next is looked for at first, in seconds. */
  private static final double NEAR_SECONDS = 0.1;

  /** A copy that became so much fainter, in dB, is taken for the last one only after a search. */
  private static final double FAINTER_DB = 10;

  /** Pieces short enough not to be smeared by a drift, in seconds. */
  private static final double[] PIECES = {1.4, 0.35};

  /** Halves of a window that lie further apart than this show a step and no drift, in samples. */
  private static final double ONE_DELAY = 2;

  /** A drift that moves the delay by less than this within a window does no harm, in samples. */
  private static final double HARMLESS = 0.3;

  /** The stretch at each edge of a window whose peak stands for the edge, in seconds. */
  private static final double EDGE_SECONDS = 0.01;

  private final Samples reference;
  private final Samples ret;
  private final int from;
  private final double maxDelaySeconds;

  /**
   * A window.
   *
   * @param reference the reference within it, in memory
   * @param ret the whole recording of the return
   * @param from the sample of the recording that the window starts with
   */
  WindowDelay(Signal reference, Samples ret, int from, double maxDelaySeconds) {
    this.reference = reference;
    this.ret = ret;
    this.from = from;
    this.maxDelaySeconds = maxDelaySeconds;
  }

  /**
   * What a window came to.
   *
   * @param lag the delay in its middle, in samples
   * @param slope the drift, in samples a sample
   * @param standard the standard uncertainty of the delay, in samples
   * @param levelDb the level of the copy
   */
  record Found(double lag, double slope, double standard, double levelDb) {
    /** Where this leads to, some samples of time later. */
    Found later(int samples) {
      return new Found(lag + slope * samples, slope, standard, levelDb);
    }

    TrackPoint at(double seconds, Samples of) {
      double expanded = new Uncertainty().with(standard).expanded();
      return new TrackPoint(seconds, new Latency(lag, of.rate()), expanded);
    }
  }

  /** The delay, near that of a window before if there was one; empty when it can't be told. */
  Optional<Found> find(Optional<Found> before) {
    if (ChannelSurvey.of(reference).isSilent()) {
      return Optional.empty();
    }
    Optional<Found> near = before.flatMap(b -> near((int) Math.rint(b.lag()), b.slope()));
    if (near.isPresent() && near.get().levelDb() > before.get().levelDb() - FAINTER_DB) {
      return near;
    }
    return anywhere().or(() -> near);
  }

  private Optional<Found> anywhere() {
    return coarse(0, reference.length())
        .or(() -> piece(PIECES[0]))
        .or(() -> piece(PIECES[1]))
        .flatMap(this::settle);
  }

  private Optional<Found> settle(int lag) {
    SlopeSearch.Slope drift = SlopeSearch.of(reference, returnAt(lag));
    return near(lag + drift.lag(), drift.perSample());
  }

  private Optional<Integer> piece(double seconds) {
    int length = reference.rate().samplesIn(seconds);
    if (length >= reference.length()) {
      return Optional.empty();
    }
    return coarse(Loudest.in(reference, length, length / 8).from(), length);
  }

  /** The strongest lag that can be trusted, from a part of the window. */
  private Optional<Integer> coarse(int start, int length) {
    Reading reading =
        new Reading(
            reference.stretch(start, length),
            new Window(ret, from + start, length + reference.rate().samplesIn(maxDelaySeconds)));
    Spectra spectra = Spectra.of(List.of(reading), maxDelaySeconds);
    Copy copy = spectra.strongest();
    return Trust.holds(Fit.of(spectra, List.of(copy)))
        ? Optional.of((int) Math.rint(copy.lag()))
        : Optional.empty();
  }

  /** The return, in memory, moved by a lag and readable on both sides. */
  private Samples returnAt(int lag) {
    int margin =
        (int) (SlopeSearch.STEEPEST * reference.length())
            + 4 * ShortBlocks.lengthAt(reference.rate());
    int first = from + lag - margin;
    Signal kept = ret.slice(first, first + reference.length() + 2 * margin);
    return new Window(kept, margin, reference.length());
  }

  private Optional<Found> near(int lag, double slope) {
    Samples moved = returnAt(lag);
    Optional<Found> found = refined(moved, lag, slope);
    if (found.isEmpty() || Math.abs(found.get().slope() - slope) * reference.length() < HARMLESS) {
      return found;
    }
    return refined(moved, lag, found.get().slope()).or(() -> found);
  }

  private Optional<Found> refined(Samples moved, int lag, double slope) {
    double middle = reference.length() / 2.0;
    Samples steady = slope == 0 ? moved : new Retimed(moved, middle, slope);
    int half = reference.length() / 2;
    List<Reading> halves =
        List.of(
            new Reading(reference.stretch(0, half), new Window(steady, 0, half)),
            new Reading(reference.stretch(half, half), new Window(steady, half, half)));
    Spectra spectra = Spectra.of(halves, Math.min(NEAR_SECONDS, maxDelaySeconds));
    Fit fit = Fit.of(spectra, List.of(spectra.strongest()));
    if (!Trust.holds(fit)) {
      return Optional.empty();
    }
    double noise = fit.noiseUncertainty();
    return Optional.of(
        new Found(
            // Retimed about its own middle, the copy that is late by d came d / (1 + slope) late.
            lag + fit.measured().lag() * (1 + slope),
            slope + further(spectra, fit) / half,
            Math.hypot(Math.hypot(noise, fit.dispersion()), cut(fit)),
            Decibels.ofFactor(fit.measured().gain())));
  }

  /**
   * The standard uncertainty that comes from a window cutting through the sound. The slope of R at
   * the true delay is the sum of x dx/dn, half of what x^2 has gained from edge to edge, and not 0;
   * the delay errs by that over the sum of (dx/dn)^2 (derived). It matters where a window holds low
   * frequencies alone. Both edges at their worst, rectangular.
   */
  private double cut(Fit fit) {
    Residual residual = fit.residual();
    double slopeEnergy = residual.secondMoment(0, 1, residual.usableBins());
    int edge = reference.rate().samplesIn(EDGE_SECONDS);
    double first = reference.slice(0, edge).peak();
    double last = reference.slice(reference.length() - edge, reference.length()).peak();
    return (first * first + last * last) / 2 / slopeEnergy / Math.sqrt(3);
  }

  /**
   * By how much the second half is later than the first, where neither noise nor the cut between
   * them can be why.
   */
  private double further(Spectra spectra, Fit fit) {
    Copy first = spectra.strongest(spectra.each().get(0));
    Copy second = spectra.strongest(spectra.each().get(1));
    double gain = Math.abs(fit.measured().gain());
    double peak = reference.slice(0, reference.length()).peak();
    double cut = 0;
    for (CrossSpectrum half : spectra.each()) {
      double slopeEnergy = Math.abs(half.at(fit.measured().lag()).curvature()) / gain;
      cut = Math.max(cut, peak * peak / slopeEnergy);
    }
    double apart = second.lag() - first.lag();
    double doubt = Math.max(8 * fit.noiseUncertainty(), 2 * cut);
    return Math.abs(apart) > doubt && Math.abs(apart) < ONE_DELAY ? apart : 0;
  }
}
