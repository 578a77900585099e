package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.MeasuredSummary;
import dev.loopgauge.journal.MeasuredSummary.Told;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.signal.Decibels;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the journal compares of a document that it keeps. */
public record KeptDocument(
    Optional<String> command, Optional<Measured> measurement, List<FindingRecord> findings) {
  /** Documents named no edition before the second. */
  private static final String FIRST_EDITION = "1";

  private static final KeptDocument NONE =
      new KeptDocument(Optional.empty(), Optional.empty(), List.of());

  /** The number and what was told beside it. */
  public record Measured(
      Optional<String> definition,
      Optional<Integer> sampleRateHz,
      Optional<String> polarity,
      Optional<BigDecimal> levelDb,
      Optional<BigDecimal> levelUncertaintyDb,
      Optional<BigDecimal> signalToNoiseDb,
      Optional<String> method,
      List<Arrival> arrivals,
      List<Octave> bands) {
    private static final String INVERTED = "inverted";

    private MeasuredSummary summary(Map<String, Told> found) {
      return new MeasuredSummary(
          polarity.filter(told -> List.of("normal", INVERTED).contains(told)).map(INVERTED::equals),
          number(levelDb),
          number(levelUncertaintyDb).orElse(0.0),
          number(signalToNoiseDb),
          copies(),
          bands.stream().map(Octave::told).toList(),
          found);
    }

    private List<MeasuredSummary.Copy> copies() {
      if (arrivals.isEmpty() || sampleRateHz.filter(hertz -> hertz > 0).isEmpty()) {
        return List.of();
      }
      double sampleMs = 1000.0 / sampleRateHz.get();
      Arrival measured = arrivals.get(0);
      return arrivals.stream().skip(1).map(copy -> copy.against(measured, sampleMs)).toList();
    }
  }

  /** One copy of the sound; the measured one is the first. */
  public record Arrival(BigDecimal delaySamples, BigDecimal levelDb, Optional<String> polarity) {
    private MeasuredSummary.Copy against(Arrival measured, double sampleMs) {
      double later = delaySamples.subtract(measured.delaySamples).doubleValue();
      double gain = Decibels.toFactor(levelDb.subtract(measured.levelDb).doubleValue());
      return new MeasuredSummary.Copy(
          later * sampleMs, polarity.equals(measured.polarity) ? gain : -gain);
    }
  }

  /** An octave whose level is known. */
  public record Octave(
      BigDecimal centreHz, BigDecimal levelDb, Optional<BigDecimal> levelUncertaintyDb) {
    private MeasuredSummary.Octave told() {
      return new MeasuredSummary.Octave(
          centreHz.doubleValue(), levelDb.doubleValue(), number(levelUncertaintyDb).orElse(0.0));
    }
  }

  /** Of an entry; of one whose document can't be read, nothing. */
  public static KeptDocument of(Entry entry) {
    try {
      return of(Json.read(entry.document()));
    } catch (IOException e) {
      return NONE;
    }
  }

  /** Of a document as {@link Json#read} gives it. */
  public static KeptDocument of(Map<?, ?> document) {
    return Unbinder.read(KeptDocument.class, document).orElse(NONE);
  }

  private static Optional<Double> number(Optional<BigDecimal> figure) {
    return figure.map(BigDecimal::doubleValue);
  }

  /** The edition of what the delay means; empty where there is no number. */
  public Optional<String> edition() {
    return measurement.map(measured -> measured.definition().orElse(FIRST_EDITION));
  }

  /** How the sound card's own delay was kept out. */
  public Optional<String> method() {
    return measurement.flatMap(Measured::method);
  }

  private static Told told(String code, FindingRecord finding) {
    return new Told(finding.text().orElse(code), finding.hint().orElse("look at the entry"));
  }

  /** What is compared beside the delay. */
  public MeasuredSummary summary() {
    Map<String, Told> found = new LinkedHashMap<>();
    for (FindingRecord finding : findings) {
      finding.code().ifPresent(code -> found.put(code, told(code, finding)));
    }
    return measurement
        .map(measured -> measured.summary(found))
        .orElseGet(() -> MeasuredSummary.refused(found));
  }
}
