package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.PairDelay;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The delay between every two channels of a recording.
 *
 * @param command the command that measured
 * @param sampleRateHz the recording's rate
 * @param pairs every two of them once, the lower number first
 */
public record PairsDocument(
    String command, Outcome outcome, int sampleRateHz, List<PairRecord> pairs) implements Document {
  private static final int DECIMALS = 2;

  /** Two channels; what they have no sound in common for is null. */
  public record PairRecord(
      int from,
      int to,
      Optional<BigDecimal> delaySamples,
      Optional<BigDecimal> uncertaintySamples,
      Optional<BigDecimal> levelDb,
      Optional<BigDecimal> likeness,
      Optional<String> polarity,
      List<FindingRecord> findings) {
    private static PairRecord of(PairDelay pair) {
      Optional<Measurement> m = pair.measured();
      return new PairRecord(
          pair.from(),
          pair.to(),
          m.map(x -> Written.samples(x.delay().samples(), x.uncertaintySamples())),
          m.map(Measurement::uncertaintySamples).map(Written::uncertainSamples),
          m.map(Measurement::levelDb).map(Written::db),
          m.map(x -> Numbers.rounded(pair.coefficient(), DECIMALS)),
          m.map(x -> x.polarity().label()),
          pair.findings().stream().map(FindingRecord::of).toList());
    }

    private boolean isOf(Polarity wanted) {
      return polarity.filter(wanted.label()::equals).isPresent();
    }
  }

  /** The document of every two channels. */
  public static PairsDocument of(String command, SampleRate rate, List<PairDelay> pairs) {
    boolean measured = pairs.stream().anyMatch(pair -> pair.measured().isPresent());
    return new PairsDocument(
        command,
        measured ? Outcome.MEASURED : Outcome.NOT_TRUSTWORTHY,
        rate.hertz(),
        pairs.stream().map(PairRecord::of).toList());
  }

  /** How many pairs have sound in common. */
  public long measured() {
    return pairs.stream().filter(pair -> pair.delaySamples().isPresent()).count();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line("MEASURED: " + measured() + " of " + pairs.size() + " pairs have sound in common.");
    sheet.line("Column channel is this much later than row channel (ms):");
    matrix(sheet, pair -> pair.delaySamples().map(this::ms));
    sheet.line("Correlation, 0 for unrelated to 1 for the same:");
    matrix(sheet, pair -> pair.likeness().map(like -> plain(like, DECIMALS)));
    sheet.line("Level of the row's sound in the column's channel (dB):");
    matrix(sheet, pair -> pair.levelDb().map(db -> plain(db, 1)));
    polarity(sheet);
    return sheet.toString();
  }

  /** A sentence where no pair is inverted, else which ones are. */
  private void polarity(Sheet sheet) {
    if (pairs.stream()
        .anyMatch(pair -> pair.isOf(Polarity.INVERTED) || pair.isOf(Polarity.UNDETERMINED))) {
      sheet.line("Polarity of the row's sound in the column's channel:");
      matrix(sheet, pair -> pair.polarity().map(PairsDocument::sign));
    } else if (measured() > 0) {
      sheet.line("Polarity normal in each of these pairs.");
    }
  }

  /** Short, so that a column is no wider than its delays. */
  private static String sign(String polarity) {
    return switch (polarity) {
      case "normal" -> "+";
      case "inverted" -> "INV";
      default -> "?";
    };
  }

  private String ms(BigDecimal samples) {
    return Numbers.plain(new Latency(samples.doubleValue(), new SampleRate(sampleRateHz)).ms(), 3);
  }

  private static String plain(BigDecimal number, int decimals) {
    return Numbers.plain(number.doubleValue(), decimals);
  }

  /** Rows from the first channel, columns to the second; a dash for nothing in common. */
  private void matrix(Sheet sheet, Function<PairRecord, Optional<String>> cell) {
    List<Integer> channels =
        pairs.stream()
            .flatMap(pair -> Stream.of(pair.from(), pair.to()))
            .distinct()
            .sorted()
            .toList();
    Table<Integer> table = new Table<Integer>().figures("", String::valueOf);
    channels.stream()
        .skip(1)
        .forEach(
            column ->
                table.figures(
                    String.valueOf(column),
                    row -> row >= column ? "" : between(row, column).flatMap(cell).orElse("-")));
    table.tell(channels.subList(0, Math.max(0, channels.size() - 1)), sheet);
  }

  private Optional<PairRecord> between(int from, int to) {
    return pairs.stream().filter(pair -> pair.from() == from && pair.to() == to).findFirst();
  }
}
