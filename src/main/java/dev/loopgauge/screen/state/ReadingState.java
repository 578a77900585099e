package dev.loopgauge.screen.state;

import static dev.loopgauge.verify.Verdict.UNDECIDED;

import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.form.VerdictRecord.AspectRecord;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.ComparisonRecord.ExtraRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import dev.loopgauge.report.measured.MeasurementRecord.ArrivalRecord;
import dev.loopgauge.report.measured.MeasurementRecord.BandRecord;
import dev.loopgauge.verify.verdict.Judgement;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What was measured on a path.
 *
 * @param atMs when, in ms since 1970
 * @param line the verdict, one sentence
 * @param delay the number; null where there is none to trust
 * @param arrivalMs when its listener hears it by this reading, in ms after the source
 * @param limit how its listener stands then, in words; null where delay alone has no limit
 * @param predicted what was predicted for what a cable carries, in words; null without a budget
 * @param outdated why it says nothing of how things are now; null where it does
 * @param causes what may have made it so and what to check, the likeliest first
 * @param further what to measure next to tell them apart, or what that came to; null where one
 *     cause stands alone
 * @param openArrival whether somebody is still to say which of two arrivals is the path
 * @param findings what a person must know, with what to try
 * @param aspects how each aspect stands
 * @param arrivals other arrivals, in words
 * @param bands the delay by octave
 * @param picture how the sound stands to its picture then, and what to add; null without one
 * @param kept which part of the day it was kept as; null where it wasn't kept
 */
public record ReadingState(
    long atMs,
    String line,
    Optional<Figures> delay,
    Optional<BigDecimal> arrivalMs,
    Optional<String> limit,
    Optional<String> predicted,
    Optional<String> outdated,
    List<String> causes,
    Optional<Further> further,
    boolean openArrival,
    List<Trouble> findings,
    List<AspectState> aspects,
    List<String> arrivals,
    List<BandState> bands,
    Optional<String> picture,
    Optional<String> kept) {
  /** The last digit that is shown, in ms. */
  private static final double LEAST_MS = 0.01;

  private static final int MOST_CAUSES = 4;
  private static final int MOST_ARRIVALS = 6;

  /** The number, with its uncertainty, and how it was found. */
  public record Figures(String ms, String plusMinusMs, String samples, String how) {}

  /**
   * A further measurement.
   *
   * @param blockSize the host's block size that it takes; null where it takes none, or was taken
   */
  public record Further(String text, Optional<Integer> blockSize) {}

  /** How an aspect stands. */
  public record AspectState(String name, Judgement standing, String text) {}

  /** An octave. */
  public record BandState(String centre, String delay, String level) {}

  /**
   * Of a document.
   *
   * @param forecast what was predicted, by which the sound that no cable carries is added
   */
  static ReadingState of(Taken taken, Forecast forecast, Optional<String> outdated) {
    MeasurementDocument document = taken.document();
    Optional<MeasurementRecord> measured = document.measurement();
    return new ReadingState(
        taken.at().toInstant().toEpochMilli(),
        document.line(),
        measured.map(ReadingState::figures),
        document.comparison().map(c -> forecast.arrival(laterMs(c))),
        document.comparison().flatMap(c -> forecast.told(laterMs(c))),
        document.comparison().flatMap(c -> predicted(c, forecast)),
        outdated,
        document.comparison().map(ReadingState::causes).orElse(List.of()),
        document.comparison().flatMap(ComparisonRecord::tellApart).flatMap(ReadingState::further),
        isOpenArrival(document),
        findings(document.findings()),
        aspects(document.verdict()),
        measured.map(ReadingState::arrivals).orElse(List.of()),
        measured.map(m -> m.bands().stream().map(band -> band(m, band)).toList()).orElse(List.of()),
        document.comparison().flatMap(c -> forecast.pictured(laterMs(c))),
        taken.kept().map(when -> when.label()));
  }

  /** How much later than predicted it was, in ms. */
  static double laterMs(ComparisonRecord comparison) {
    return comparison.differenceMs().map(BigDecimal::doubleValue).orElse(0.0);
  }

  private static Optional<String> predicted(ComparisonRecord comparison, Forecast forecast) {
    return comparison
        .predictedMs()
        .map(
            ms -> {
              double rest = forecast.endMs().subtract(ms).doubleValue();
              boolean whole = Math.abs(rest) < LEAST_MS;
              boolean air = Math.abs(rest - forecast.airMs().doubleValue()) < LEAST_MS;
              return "predicted "
                  + Numbers.inMs(ms, 2)
                  + (whole ? "" : air ? ", air left out" : ", for the loop");
            });
  }

  private static Figures figures(MeasurementRecord m) {
    List<String> how = new ArrayList<>(m.method().stream().toList());
    m.repeats().ifPresent(n -> how.add(n == 1 ? "1 reading" : n + " readings"));
    m.signalToNoiseDb()
        .ifPresent(db -> how.add(Numbers.plain(db.doubleValue(), 0) + " dB above noise"));
    String bare = m.delay().bareMs();
    return new Figures(
        bare,
        m.delay().inMs().substring(bare.length()).strip(),
        m.delay().inSamples(),
        String.join(", ", how));
  }

  private static List<String> causes(ComparisonRecord comparison) {
    List<String> causes = new ArrayList<>();
    comparison.explanations().stream().limit(MOST_CAUSES).forEach(e -> causes.add(e.text()));
    return causes;
  }

  private static Optional<Further> further(ExtraRecord extra) {
    Optional<Integer> size = extra.blockSize().filter(s -> extra.measuredSamples().isEmpty());
    return extra.text().map(text -> new Further(text, size));
  }

  private static boolean isOpenArrival(MeasurementDocument document) {
    return document.comparison().flatMap(ComparisonRecord::verdict).equals(Optional.of(UNDECIDED))
        && document.findings().stream()
            .anyMatch(f -> f.code().equals(Optional.of(FindingCode.TWO_ARRIVALS.label())));
  }

  private static List<Trouble> findings(List<FindingRecord> findings) {
    return findings.stream()
        .map(f -> new Trouble(f.text().or(f::code).orElse(""), f.hint().orElse("")))
        .toList();
  }

  private static List<AspectState> aspects(Optional<VerdictRecord> verdict) {
    List<AspectState> aspects = new ArrayList<>();
    for (AspectRecord one : verdict.map(VerdictRecord::aspects).orElse(List.of())) {
      aspects.add(
          new AspectState(
              one.aspect().map(aspect -> aspect.label().replace('-', ' ')).orElse("?"),
              one.standing().orElse(Judgement.NOT_JUDGED),
              one.text().orElse("")));
    }
    return aspects;
  }

  private static List<String> arrivals(MeasurementRecord m) {
    return m.arrivals().stream()
        .skip(1)
        .limit(MOST_ARRIVALS)
        .map(arrival -> told(m, arrival))
        .toList();
  }

  private static String told(MeasurementRecord m, ArrivalRecord arrival) {
    List<String> words = new ArrayList<>();
    arrival
        .delaySamples()
        .ifPresent(
            samples -> {
              double later = samples.subtract(m.delaySamples()).doubleValue();
              words.add(Numbers.signed(m.delay().toMs(later), 2) + " ms");
            });
    arrival.levelDb().ifPresent(db -> words.add(Numbers.plain(db.doubleValue(), 1) + " dB"));
    arrival.polarity().ifPresent(polarity -> words.add("polarity " + polarity));
    return String.join(", ", words);
  }

  private static BandState band(MeasurementRecord m, BandRecord band) {
    String delay =
        band.uncertaintySamples()
            .map(u -> Numbers.plusMinus(band.delaySamples().doubleValue(), u.doubleValue(), 2))
            .orElse(Numbers.plain(band.delaySamples().doubleValue(), 2));
    return new BandState(
        Numbers.brief(band.centreHz().doubleValue(), 0) + " Hz",
        delay
            + " samples, "
            + Numbers.plain(m.delay().toMs(band.delaySamples().doubleValue()), 2)
            + " ms",
        band.levelDb().map(db -> Numbers.plain(db.doubleValue(), 1) + " dB").orElse(""));
  }
}
