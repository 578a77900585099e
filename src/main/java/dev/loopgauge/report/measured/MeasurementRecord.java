package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.Passband;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A trusted number, as documents hold it. Without rate, delay and uncertainty there is none.
 *
 * @param ambiguous true where another arrival may be the path; else left out
 */
public record MeasurementRecord(
    Optional<String> definition,
    int sampleRateHz,
    BigDecimal delaySamples,
    Optional<BigDecimal> delayMs,
    BigDecimal uncertaintySamples,
    Optional<BigDecimal> uncertaintyMs,
    Optional<Integer> coverageFactor,
    List<BigDecimal> bandHz,
    Optional<PureRecord> pure,
    Optional<String> polarity,
    Optional<BigDecimal> levelDb,
    Optional<BigDecimal> levelUncertaintyDb,
    Optional<BigDecimal> signalToNoiseDb,
    Optional<String> method,
    Optional<Integer> repeats,
    Optional<BigDecimal> clockDriftPpm,
    Optional<BigDecimal> clockDriftUncertaintyPpm,
    List<ArrivalRecord> arrivals,
    List<MissingRecord> lostSound,
    List<BandRecord> bands,
    Optional<Boolean> ambiguous)
    implements Sparse {
  private static final int PPM_DECIMALS = 3;
  private static final int HZ_DECIMALS = 2;
  private static final int SECOND_DECIMALS = 4;

  /** The delay that no filter explains. */
  public record PureRecord(BigDecimal delaySamples, BigDecimal uncertaintySamples) {
    static Optional<PureRecord> of(Optional<PureDelay> pure) {
      if (pure.isEmpty()) {
        return Optional.empty();
      }
      double uncertainty = pure.get().uncertaintySamples();
      return Optional.of(
          new PureRecord(
              Written.samples(pure.get().samples(), uncertainty),
              Written.uncertainSamples(uncertainty)));
    }
  }

  /** One copy of the stimulus in the return. */
  public record ArrivalRecord(
      Optional<BigDecimal> delaySamples, Optional<BigDecimal> levelDb, Optional<String> polarity) {}

  /** Sound that the return lacks. */
  public record MissingRecord(BigDecimal atSeconds, BigDecimal ms) {}

  /** Delay and level in one octave. */
  public record BandRecord(
      BigDecimal centreHz,
      BigDecimal delaySamples,
      Optional<BigDecimal> uncertaintySamples,
      Optional<BigDecimal> levelDb,
      Optional<BigDecimal> levelUncertaintyDb) {}

  /**
   * Checks the figures.
   *
   * @throws IllegalArgumentException when rate or uncertainty aren't positive
   */
  public MeasurementRecord {
    if (sampleRateHz <= 0 || uncertaintySamples.signum() <= 0) {
      throw new IllegalArgumentException(
          "rate and uncertainty must be positive, not %d Hz and %s samples"
              .formatted(sampleRateHz, uncertaintySamples));
    }
  }

  /** Of a measurement, where there is one. */
  static Optional<MeasurementRecord> of(Optional<Measurement> measurement) {
    return measurement.isPresent() ? Optional.of(of(measurement.get())) : Optional.empty();
  }

  /** Of a measurement. */
  static MeasurementRecord of(Measurement m) {
    double uncertainty = m.uncertaintySamples();
    return new MeasurementRecord(
        Optional.of(Measurement.DEFINITION),
        m.delay().rate().hertz(),
        Written.samples(m.delay().samples(), uncertainty),
        Optional.of(Written.ms(m.delay().ms(), m.uncertaintyMs())),
        Written.uncertainSamples(uncertainty),
        Optional.of(Written.uncertainMs(m.uncertaintyMs())),
        Optional.of(Measurement.COVERAGE_FACTOR),
        bandHz(m),
        PureRecord.of(m.pure()),
        Optional.of(m.polarity().label()),
        Optional.of(Written.db(m.levelDb())),
        Optional.of(Written.uncertainDb(m.levelUncertaintyDb())),
        Optional.of(Written.db(m.signalToNoiseDb())),
        Optional.of(m.method().label()),
        Optional.of(m.repeats()),
        ppm(m),
        uncertainPpm(m),
        arrivals(m.arrivals(), uncertainty),
        missing(m.lostSound()),
        bands(m.bands()),
        m.ambiguous() ? Optional.of(true) : Optional.empty());
  }

  private static List<BigDecimal> bandHz(Measurement m) {
    if (m.passband().isEmpty()) {
      return List.of();
    }
    Passband band = m.passband().get();
    return List.of(
        Numbers.rounded(band.fromHz(), HZ_DECIMALS), Numbers.rounded(band.toHz(), HZ_DECIMALS));
  }

  private static Optional<BigDecimal> ppm(Measurement m) {
    return m.clockDriftPpm().isPresent()
        ? Optional.of(Numbers.rounded(m.clockDriftPpm().getAsDouble(), PPM_DECIMALS))
        : Optional.empty();
  }

  private static Optional<BigDecimal> uncertainPpm(Measurement m) {
    return m.clockDrift().isPresent()
        ? Optional.of(Numbers.roundedUp(m.clockDrift().get().uncertaintyPpm(), PPM_DECIMALS))
        : Optional.empty();
  }

  private static List<ArrivalRecord> arrivals(List<Arrival> arrivals, double uncertainty) {
    List<ArrivalRecord> records = new ArrayList<>();
    for (Arrival arrival : arrivals) {
      records.add(
          new ArrivalRecord(
              Optional.of(Written.samples(arrival.delaySamples(), uncertainty)),
              Optional.of(Written.db(arrival.levelDb())),
              Optional.of(arrival.polarity().label())));
    }
    return records;
  }

  private static List<MissingRecord> missing(List<MissingSound> lost) {
    List<MissingRecord> records = new ArrayList<>();
    for (MissingSound sound : lost) {
      records.add(
          new MissingRecord(
              Numbers.rounded(sound.atSeconds(), SECOND_DECIMALS), Written.ms(sound.ms())));
    }
    return records;
  }

  private static List<BandRecord> bands(List<Band> bands) {
    List<BandRecord> records = new ArrayList<>();
    for (Band band : bands) {
      records.add(
          new BandRecord(
              Numbers.rounded(band.centreHz(), HZ_DECIMALS),
              Written.samples(band.delaySamples(), band.uncertaintySamples()),
              Optional.of(Written.uncertainSamples(band.uncertaintySamples())),
              Optional.of(Written.db(band.levelDb())),
              Optional.of(Written.uncertainDb(band.levelUncertaintyDb()))));
    }
    return records;
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("ambiguous", "bandHz");
  }

  /** The delay as it is shown. */
  public ShownDelay delay() {
    return new ShownDelay(
        delaySamples.doubleValue(),
        uncertaintySamples.doubleValue(),
        sampleRateHz,
        isUncalibrated());
  }

  /** What a budget is compared with, as it is shown: the pure delay where it is known. */
  public ShownDelay budgeted() {
    return pure.isEmpty()
        ? delay()
        : new ShownDelay(
            pure.get().delaySamples().doubleValue(),
            pure.get().uncertaintySamples().doubleValue(),
            sampleRateHz,
            isUncalibrated());
  }

  /** Whether a filter in the path makes its delay another than the pure one. */
  public boolean isFiltered() {
    return pure.isPresent() && pure.get().delaySamples().compareTo(delaySamples) != 0;
  }

  /** Whether the sound card's own delay is in it. */
  public boolean isUncalibrated() {
    return method.equals(Optional.of(Method.UNCALIBRATED.label()));
  }
}
