package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.PairDelay;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.SampleRate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * The delay between every two channels of a recording.
 *
 * @param command the command that measured
 * @param rate the recording's rate
 * @param channels their numbers, rising
 * @param pairs every two of them once, the lower number first
 */
public record PairsDocument(
    String command, SampleRate rate, List<Integer> channels, List<PairDelay> pairs)
    implements Document {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int DECIMALS = 2;

  /** Copies the lists. */
  public PairsDocument {
    channels = List.copyOf(channels);
    pairs = List.copyOf(pairs);
  }

  private long measured() {
    return pairs.stream().filter(pair -> pair.measured().isPresent()).count();
  }

  @Override
  public Map<String, Object> json() {
    Outcome outcome = measured() > 0 ? Outcome.MEASURED : Outcome.NOT_TRUSTWORTHY;
    Map<String, Object> json = Document.head(command, outcome.label());
    json.put("sampleRateHz", rate.hertz());
    json.put("pairs", pairs.stream().map(PairsDocument::pair).toList());
    return json;
  }

  private static Map<String, Object> pair(PairDelay pair) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("from", pair.from());
    json.put("to", pair.to());
    Optional<Measurement> m = pair.measured();
    json.put(
        "delaySamples",
        m.map(x -> Numbers.rounded(x.delay().samples(), SAMPLE_DECIMALS)).orElse(null));
    json.put(
        "uncertaintySamples",
        m.map(x -> Numbers.roundedUp(x.uncertaintySamples(), SAMPLE_DECIMALS)).orElse(null));
    json.put(
        "levelDb",
        m.map(x -> Numbers.rounded(Numbers.tellableDb(x.levelDb()), DECIMALS)).orElse(null));
    json.put("likeness", m.map(x -> Numbers.rounded(pair.likeness(), DECIMALS)).orElse(null));
    json.put("polarity", m.map(x -> x.polarity().label()).orElse(null));
    json.put("findings", pair.findings().stream().map(MeasurementJson::finding).toList());
    return json;
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    sheet.line("MEASURED: " + measured() + " of " + pairs.size() + " pairs have sound in common.");
    sheet.line("delay in ms, how much later the row's sound is in the column's channel");
    matrix(sheet, pair -> pair.measured().map(m -> Numbers.plain(m.delay().ms(), 3)));
    sheet.line("likeness, 0 for unrelated to 1 for the same");
    matrix(sheet, pair -> pair.measured().map(m -> Numbers.plain(pair.likeness(), DECIMALS)));
    sheet.line("level in dB, of the row's sound in the column's channel");
    matrix(
        sheet, pair -> pair.measured().map(m -> Numbers.plain(Numbers.tellableDb(m.levelDb()), 1)));
    return sheet.toString();
  }

  /** Rows from the first channel, columns to the second; a dash for nothing in common. */
  private void matrix(Sheet sheet, Function<PairDelay, Optional<String>> cell) {
    Table<Integer> table = new Table<Integer>().figures("", String::valueOf);
    for (int column : channels.subList(1, channels.size())) {
      table.figures(
          String.valueOf(column),
          row -> row >= column ? "" : cell.apply(between(row, column)).orElse("-"));
    }
    table.lines(channels.subList(0, channels.size() - 1)).forEach(sheet::asIs);
  }

  private PairDelay between(int from, int to) {
    return pairs.stream()
        .filter(pair -> pair.from() == from && pair.to() == to)
        .findFirst()
        .orElseThrow();
  }
}
