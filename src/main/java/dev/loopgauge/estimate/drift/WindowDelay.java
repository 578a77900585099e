package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.detection.Detection;
import dev.loopgauge.estimate.integrity.Clipping;
import dev.loopgauge.estimate.integrity.FlatTops;
import dev.loopgauge.estimate.path.ClippingEffect;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.Uncertainty;
import dev.loopgauge.estimate.reading.Loudest;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Resampled;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.ShortBlocks;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Optional;

/**
 * The delay within one window of a track: near where it was before, or anywhere.
 *
 * <p>A drift that smears the correlation is taken out first ({@link Resampled}), by the drift of
 * the window before or, where there was none, by a search ({@link SlopeSearch}).
 */
public final class WindowDelay {
  /**
   * How far from the last delay the next is looked for at first, in seconds. It saves time only:
   * what may explain more is looked for anywhere.
   */
  private static final double NEAR_SECONDS = 0.1;

  /** Pieces short enough not to be smeared by a drift, in seconds. */
  private static final double[] PIECES = {1.4, 0.35};

  private final Samples sent;
  private final Window reference;
  private final Samples ret;
  private final int from;
  private final double maxDelaySeconds;
  private final boolean all;

  /**
   * A window.
   *
   * @param sent the reference within it; what it holds on either side is used too
   * @param ret the whole recording of the return
   * @param from the sample of the recording that the window starts with
   * @param all whether to tell of the sound besides its delay
   */
  public WindowDelay(Samples sent, Samples ret, int from, double maxDelaySeconds, boolean all) {
    this.sent = sent;
    this.reference = kept(sent, 0, sent.length(), sent.rate().samplesIn(NEAR_SECONDS));
    this.ret = ret;
    this.from = from;
    this.maxDelaySeconds = maxDelaySeconds;
    this.all = all;
  }

  /**
   * How many samples of the return on either side of a window are looked at around a delay, those
   * that a search for the delay takes left aside.
   */
  public static int reach(SampleRate rate, int window) {
    return rate.samplesIn(NEAR_SECONDS) + beside((int) (SlopeSearch.STEEPEST * window), rate);
  }

  private static int beside(int reach, SampleRate rate) {
    return reach + 4 * ShortBlocks.lengthAt(rate);
  }

  /**
   * What a window came to.
   *
   * @param lag the delay in its middle, in samples
   * @param slope the drift, in samples a sample
   * @param standard the standard uncertainty of the delay, in samples
   * @param gain what the arrival is multiplied by, negative where it is inverted
   * @param unexplained the share of the return that is left of it
   * @param centre the same where the sound is, in the middle where that wasn't asked
   * @param besides what else was heard, where that was asked
   */
  public record Found(
      double lag,
      double slope,
      double standard,
      double gain,
      double unexplained,
      Centre centre,
      WindowSound besides) {
    /** Where this leads to, some samples of time later. */
    public Found later(long samples) {
      double then = lag + slope * samples;
      Centre middle = new Centre(0, then, standard);
      return new Found(then, slope, standard, gain, unexplained, middle, WindowSound.NONE);
    }

    /** Whether no other arrival can explain more of what an arrival explained before. */
    boolean explainsMost(Found before) {
      return 1 - unexplained > (1 - before.unexplained) / 2;
    }

    /** The level of the arrival, in dB. */
    public double levelDb() {
      return Decibels.ofFactor(gain);
    }

    /** The same, less certain by an independent standard uncertainty, in samples. */
    public Found with(double further) {
      Centre alike = new Centre(centre.off, centre.lag, Math.hypot(centre.standard, further));
      return new Found(
          lag, slope, Math.hypot(standard, further), gain, unexplained, alike, besides);
    }

    /**
     * The delay as the point of a track.
     *
     * @param middle when the middle of the window is, in seconds
     */
    public TrackPoint at(double middle, SampleRate rate) {
      return point(middle, lag, standard, rate);
    }

    /** The same at the centre of the sound. */
    public TrackPoint atCentre(double middle, SampleRate rate) {
      return point(middle + centre.off / rate.hertz(), centre.lag, centre.standard, rate);
    }

    private static TrackPoint point(double at, double lag, double standard, SampleRate rate) {
      double expanded = new Uncertainty().with(standard).expanded();
      return new TrackPoint(at, new Latency(lag, rate), expanded);
    }
  }

  /**
   * The delay where the sound is that tells it. While the delay drifts, a window that holds a pause
   * reads it at the centre of its sound ({@link WindowSound#centre}), which says nothing of the
   * middle of the window but by the drift.
   *
   * @param off how far that is behind the middle of the window, in samples
   * @param lag the delay there, in samples
   * @param standard its standard uncertainty, in samples
   */
  public record Centre(double off, double lag, double standard) {}

  /** The delay, near that of a window before if there was one; empty when it can't be told. */
  public Optional<Found> find(Optional<Found> before) {
    if (Loudness.isSilence(reference)) {
      return Optional.empty();
    }
    Optional<Found> near = before.flatMap(b -> near((int) Math.rint(b.lag()), b.slope()));
    return near.isPresent() && near.get().explainsMost(before.get())
        ? near
        : anywhere().or(() -> near);
  }

  private Optional<Found> anywhere() {
    int furthest = reference.rate().samplesIn(maxDelaySeconds);
    return coarse(0, reference.length())
        .or(() -> piece(PIECES[0]))
        .or(() -> piece(PIECES[1]))
        .flatMap(this::settle)
        .filter(found -> Math.abs(found.lag()) <= furthest);
  }

  private Optional<Found> settle(int lag) {
    SlopeSearch.Slope drift = SlopeSearch.of(reference, returnAt(lag));
    return near(lag + drift.lag(), drift.perSample());
  }

  /** The found delay as clipping leaves it: less certain, or none. */
  public Optional<Found> unclipped(Found found) {
    Optional<Clipping> clipping = unmoved(Optional.of(found)).map(ClippingEffect::clipping);
    return clipping.filter(Clipping::spoils).isPresent()
        ? Optional.empty()
        : Optional.of(found.with(clipping.map(c -> c.standard(found.standard())).orElse(0.0)));
  }

  /** Whether the window is clipped, at the delay found or where it is most like its reference. */
  public boolean isClipped(Optional<Found> found) {
    return unmoved(found).isPresent();
  }

  /** What the return as it was recorded tells of clipping, with no drift taken out. */
  private Optional<ClippingEffect> unmoved(Optional<Found> at) {
    int lag = at.map(found -> (int) Math.rint(found.lag())).orElse(0);
    double[] heard = new double[reference.length()];
    ret.copyTo(from + lag, heard, 0, heard.length);
    if (FlatTops.of(heard).isEmpty()) {
      return Optional.empty();
    }
    double search = at.isPresent() ? Math.min(NEAR_SECONDS, maxDelaySeconds) : maxDelaySeconds;
    Window window = new Window(ret, from + lag, reference.length());
    Spectra spectra = Spectra.of(List.of(new Reading(reference, window)), search);
    return ClippingEffect.of(spectra, Fit.of(spectra, List.of(spectra.strongest())));
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
            Window.on(sent, start, length),
            new Window(ret, from + start, length + reference.rate().samplesIn(maxDelaySeconds)));
    Spectra spectra = Spectra.of(List.of(reading), maxDelaySeconds);
    FittedArrival arrival = spectra.strongest();
    return new Detection(spectra, Fit.of(spectra, List.of(arrival))).holds()
        ? Optional.of((int) Math.rint(arrival.lag()))
        : Optional.empty();
  }

  /** The return, in memory, moved by a lag. */
  private Samples returnAt(int lag) {
    return moved(ret, from + lag);
  }

  private Window moved(Samples samples, int to) {
    int length = reference.length();
    return kept(samples, to, length, (int) (SlopeSearch.STEEPEST * length));
  }

  /** A part of a recording, in memory and readable on both sides: so far, and for short blocks. */
  private static Window kept(Samples samples, int from, int length, int reach) {
    int beside = beside(reach, samples.rate());
    Signal kept = samples.slice(from - beside, from + length + beside);
    return new Window(kept, beside, length);
  }

  /**
   * What a slope that was taken out left.
   *
   * @param further the slope that the halves still tell, 0 where noise can be why
   */
  private record Fitted(Found found, double further) {}

  /**
   * The delay near a lag. A drift is believed where less of the return is left with it than
   * without, be it the last window's or that between the halves: halves of few tones, or a step, a
   * turned polarity or a gap in one of them, are each most like the reference at lags of their own.
   */
  private Optional<Found> near(int lag, double slope) {
    Samples moved = returnAt(lag);
    Optional<Fitted> fitted = refined(moved, lag, slope);
    if (slope != 0) {
      fitted = better(fitted, refined(moved, lag, 0));
    }
    if (fitted.isPresent() && fitted.get().further() != 0) {
      double more = fitted.get().found().slope() + fitted.get().further();
      if (Math.abs(more) < 1e-6 * InhomogeneousReadings.WORST_CLOCK_PPM) {
        fitted = better(fitted, refined(moved, lag, more));
      }
    }
    return fitted.map(Fitted::found);
  }

  private static Optional<Fitted> better(Optional<Fitted> one, Optional<Fitted> other) {
    return other
        .filter(o -> one.isEmpty() || o.found().unexplained() < one.get().found().unexplained())
        .or(() -> one);
  }

  private Optional<Fitted> refined(Samples moved, int lag, double slope) {
    double middle = reference.length() / 2.0;
    // In memory, since each look at it would interpolate it anew.
    Samples steady = slope == 0 ? moved : moved(new Resampled(moved, middle, slope), 0);
    int half = reference.length() / 2;
    List<Reading> halves =
        List.of(
            new Reading(Window.on(reference, 0, half), new Window(steady, 0, half)),
            new Reading(Window.on(reference, half, half), new Window(steady, half, half), half));
    Spectra spectra = Spectra.of(halves, Math.min(NEAR_SECONDS, maxDelaySeconds));
    Fit fit = Fit.of(spectra, List.of(spectra.strongest()));
    if (!new Detection(spectra, fit).holds()) {
      return Optional.empty();
    }
    DriftWithin drift = new DriftWithin(spectra, fit);
    double ofMiddle = slope == 0 ? 0 : drift.uncertainty();
    double ofCentre = Math.hypot(fit.noiseUncertainty(), fit.dispersion());
    double standard = Math.hypot(ofCentre, ofMiddle);
    if (!Double.isFinite(standard)) {
      return Optional.empty();
    }
    // Resampled about its own middle, the arrival that is late by d came d / (1 + slope) late.
    double late = lag + fit.measured().lag() * (1 + slope);
    WindowSound sound = all ? WindowSound.of(spectra.readings(), fit, lag) : WindowSound.NONE;
    Found found =
        new Found(
            late,
            slope,
            standard,
            fit.measured().gain(),
            fit.residual().unexplained(),
            new Centre(sound.centre(), late + slope * sound.centre(), ofCentre),
            sound);
    return Optional.of(new Fitted(found, drift.further() / half));
  }
}
