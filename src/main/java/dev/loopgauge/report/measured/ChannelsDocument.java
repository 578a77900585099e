package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * One reference against several return channels.
 *
 * @param command the command that measured
 * @param channels each channel and what came of it, at least one
 */
public record ChannelsDocument(String command, List<Channel> channels) implements Document {
  private static final int MOST_MS_DECIMALS = 4;

  /** Copies the channels. */
  public ChannelsDocument {
    channels = List.copyOf(channels);
  }

  /**
   * One channel.
   *
   * @param number the channel, counted from 1
   * @param document what came of it
   */
  public record Channel(int number, MeasurementDocument document) {}

  /** The document of channels by their numbers, one document for each. */
  public static ChannelsDocument of(
      String command, List<Integer> numbers, List<MeasurementDocument> documents) {
    List<Channel> channels = new ArrayList<>();
    for (int i = 0; i < numbers.size(); i++) {
      channels.add(new Channel(numbers.get(i), documents.get(i)));
    }
    return new ChannelsDocument(command, channels);
  }

  /** The worst outcome of all. */
  public Outcome outcome() {
    return channels.stream()
        .map(channel -> channel.document().outcome())
        .reduce((one, other) -> one.compareTo(other) < 0 ? other : one)
        .orElseThrow();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head(command, outcome().label());
    json.put("channels", channels.stream().map(ChannelsDocument::channel).toList());
    return json;
  }

  private static Map<String, Object> channel(Channel channel) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("channel", channel.number());
    Map<String, Object> whole = channel.document().json();
    Stream.of("outcome", "measurement", "findings", "comparison")
        .forEach(key -> json.put(key, whole.get(key)));
    return json;
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    long measured = channels.stream().filter(c -> c.document().measurement().isPresent()).count();
    sheet.line("MEASURED: " + measured + " of " + channels.size() + " channels.");
    new Table<Channel>()
        .figures("channel", channel -> String.valueOf(channel.number()))
        .figures("samples", channel -> figure(channel, ChannelsDocument::samples))
        .figures("±", channel -> figure(channel, ChannelsDocument::uncertainty))
        .figures("ms", channel -> figure(channel, ChannelsDocument::ms))
        .figures("level dB", channel -> figure(channel, ChannelsDocument::level))
        .words("outcome", ChannelsDocument::remark)
        .lines(channels)
        .forEach(sheet::asIs);
    channels.get(0).document().notes().forEach(note -> sheet.row("note", note));
    return sheet.toString();
  }

  private static String figure(Channel channel, Function<Measurement, String> part) {
    return channel.document().measurement().map(part).orElse("-");
  }

  private static String samples(Measurement m) {
    return Numbers.plain(m.delay().samples(), Figures.sampleDecimals(m));
  }

  private static String uncertainty(Measurement m) {
    return Numbers.plainUp(m.uncertaintySamples(), Figures.sampleDecimals(m));
  }

  private static String ms(Measurement m) {
    return Numbers.plain(m.delay().ms(), Numbers.decimalsFor(m.uncertaintyMs(), MOST_MS_DECIMALS));
  }

  private static String level(Measurement m) {
    return Numbers.plain(Numbers.tellableDb(m.levelDb()), 1);
  }

  private static String remark(Channel channel) {
    Estimate estimate = channel.document().estimate();
    List<String> words = new ArrayList<>();
    if (estimate instanceof Estimate.Found) {
      words.add(channel.document().outcome().label());
    }
    estimate.findings().stream()
        .filter(finding -> estimate instanceof Estimate.Found || finding.refuses())
        .map(finding -> finding.refuses() ? finding.text() : finding.code().label())
        .forEach(words::add);
    return String.join(", ", words);
  }
}
