package dev.loopgauge.estimate.result;

import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A delay that can be trusted, and what else was read from the same capture.
 *
 * @param delay how much later the return is than the reference; negative when it leads
 * @param uncertaintySamples the expanded uncertainty of the delay, k = 2, in samples
 * @param pure the delay that no filter explains, on a flat path the same; empty where it can't be
 *     told
 * @param passband the frequencies that the delay was read from, where they are known
 * @param polarity the return's sign against the reference
 * @param levelDb the return's level against the reference, in dB
 * @param levelUncertaintyDb the expanded uncertainty of that from noise (k = 2), in dB
 * @param signalToNoiseDb the power of the found arrival against all else in the return, in dB
 * @param method how the sound card's own delay was kept out
 * @param repeats how many readings were combined, at least 1
 * @param clockDrift how the clocks of both drift apart, where known
 * @param arrivals all arrivals found, the strongest first
 * @param lostSound what the return lacks, in its order
 * @param bands delay and level by octave band, low to high, where they could be told
 * @param response the path's response along the delay axis, where it was worked out
 * @param ambiguous whether another arrival may be the path, so that no verdict may follow
 */
public record Measurement(
    Latency delay,
    double uncertaintySamples,
    Optional<PureDelay> pure,
    Optional<Passband> passband,
    Polarity polarity,
    double levelDb,
    double levelUncertaintyDb,
    double signalToNoiseDb,
    Method method,
    int repeats,
    Optional<ClockDrift> clockDrift,
    List<Arrival> arrivals,
    List<MissingSound> lostSound,
    List<Band> bands,
    Optional<Response> response,
    boolean ambiguous) {
  /**
   * The edition of what "the delay" means: 1 was the peak of the correlation, 2 is when the path's
   * own response is strongest.
   */
  public static final String DEFINITION = "2";

  /** The coverage factor of every expanded uncertainty here (JCGM 100:2008, about 95 %). */
  public static final int COVERAGE_FACTOR = 2;

  /**
   * Checks the numbers and copies the lists.
   *
   * @throws IllegalArgumentException when a number is not finite, the uncertainty is not above 0,
   *     or there are no repeats
   */
  public Measurement {
    if (!(uncertaintySamples > 0) || Double.isInfinite(uncertaintySamples)) {
      throw new IllegalArgumentException(
          "an uncertainty must be a positive number of samples, not " + uncertaintySamples);
    }
    Finite.check("a delay", delay.samples());
    Finite.check("a level", levelDb);
    Finite.checkUncertainty("of a level", levelUncertaintyDb);
    Finite.check("a signal-to-noise ratio", signalToNoiseDb);
    if (repeats < 1) {
      throw new IllegalArgumentException("a measurement has at least one reading, not " + repeats);
    }
    arrivals = List.copyOf(arrivals);
    lostSound = List.copyOf(lostSound);
    bands = List.copyOf(bands);
  }

  /** How fast the return falls behind, in parts per million, where known. */
  public OptionalDouble clockDriftPpm() {
    return clockDrift.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(clockDrift.get().ppm());
  }

  /** The expanded uncertainty as a time, in ms. */
  public double uncertaintyMs() {
    return new Latency(uncertaintySamples, delay.rate()).ms();
  }

  /** The same measurement with another delay and certainty, as several readings give. */
  public Measurement ofReadings(
      int count, Latency common, double uncertainty, Optional<ClockDrift> drift, boolean unsure) {
    return new Measurement(
        common,
        uncertainty,
        pure.map(p -> ofReadings(p, common, uncertainty)),
        passband,
        polarity,
        levelDb,
        levelUncertaintyDb,
        signalToNoiseDb,
        method,
        count,
        drift,
        arrivals,
        lostSound,
        bands,
        response,
        unsure);
  }

  private PureDelay ofReadings(PureDelay one, Latency common, double uncertainty) {
    return one.moved(common.samples() - delay.samples(), beside(uncertainty));
  }

  /** What an uncertainty holds beside this measurement's own, as squares. */
  private double beside(double uncertainty) {
    double squares = uncertainty * uncertainty - uncertaintySamples * uncertaintySamples;
    return Math.sqrt(Math.max(0, squares));
  }

  /** What a budget is compared with: the pure delay, or where it is not known, the delay. */
  public PureDelay budgeted() {
    return pure.orElseGet(() -> new PureDelay(delay.samples(), uncertaintySamples));
  }

  /** The same measurement by another method of keeping the sound card's own delay out. */
  public Measurement withMethod(Method other) {
    return moved(0, uncertaintySamples, other);
  }

  /**
   * The measurement less the delay of a patch cable measured the same way: what is left is the rig.
   *
   * @param cableSamples the cable's delay, card included, in samples
   * @param cableUncertainty its expanded uncertainty (k = 2), in samples; it adds as squares
   * @param by the method that this makes it
   */
  public Measurement lessCalibration(double cableSamples, double cableUncertainty, Method by) {
    return moved(-cableSamples, Math.hypot(uncertaintySamples, cableUncertainty), by);
  }

  /**
   * The same measurement less certain.
   *
   * @param samples how much more its delay may be off, in samples, 0 or more
   */
  public Measurement widened(double samples) {
    return moved(0, uncertaintySamples + samples, method);
  }

  private Measurement moved(double bySamples, double uncertainty, Method by) {
    return new Measurement(
        new Latency(delay.samples() + bySamples, delay.rate()),
        uncertainty,
        pure.map(p -> p.moved(bySamples, beside(uncertainty))),
        passband,
        polarity,
        levelDb,
        levelUncertaintyDb,
        signalToNoiseDb,
        by,
        repeats,
        clockDrift,
        arrivals.stream().map(a -> a.moved(bySamples)).toList(),
        lostSound,
        bands.stream().map(b -> b.moved(bySamples)).toList(),
        response.map(r -> r.moved(bySamples)),
        ambiguous);
  }
}
