package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.form.VerdictRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * One reference against several return channels.
 *
 * @param command the command that measured
 * @param outcome the worst outcome of all
 * @param channels each channel and what came of it
 * @param notes what the reader must take for granted, one sentence each
 */
public record ChannelsDocument(
    String command, Outcome outcome, List<ChannelRecord> channels, List<String> notes)
    implements Document, Sparse {
  /** One channel, counted from 1, and what came of it. */
  public record ChannelRecord(
      int channel,
      Outcome outcome,
      Optional<VerdictRecord> verdict,
      Optional<MeasurementRecord> measurement,
      List<FindingRecord> findings,
      Optional<ComparisonRecord> comparison,
      Optional<ResponseRecord> response,
      Optional<HostCheckRecord> hostCheck,
      Optional<KeptRecord> kept)
      implements Sparse {
    private static ChannelRecord of(int channel, MeasurementDocument document) {
      return new ChannelRecord(
          channel,
          document.outcome(),
          document.verdict(),
          document.measurement(),
          document.findings(),
          document.comparison(),
          document.response(),
          document.hostCheck(),
          document.kept());
    }

    private ChannelRecord withKept(KeptRecord now) {
      return new ChannelRecord(
          channel,
          outcome,
          verdict,
          measurement,
          findings,
          comparison,
          response,
          hostCheck,
          Optional.of(now));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("verdict", "response", "hostCheck", "kept");
    }

    private String figure(Function<ShownDelay, String> part) {
      return measurement.map(MeasurementRecord::delay).map(part).orElse("-");
    }

    private String level() {
      return measurement
          .flatMap(MeasurementRecord::levelDb)
          .map(db -> Numbers.plain(db.doubleValue(), 1))
          .orElse("-");
    }

    private String remark() {
      List<String> words = new ArrayList<>();
      measurement.ifPresent(m -> words.add(outcome.label()));
      findings.stream()
          .filter(finding -> measurement.isPresent() || finding.isRefusal())
          .flatMap(f -> (f.isRefusal() ? f.text() : f.code()).stream())
          .forEach(words::add);
      return String.join(", ", words);
    }
  }

  /** The document of channels by their numbers, one document for each, at least one. */
  public static ChannelsDocument of(
      String command, List<Integer> numbers, List<MeasurementDocument> documents) {
    List<ChannelRecord> channels = new ArrayList<>();
    for (int i = 0; i < numbers.size(); i++) {
      channels.add(ChannelRecord.of(numbers.get(i), documents.get(i)));
    }
    return new ChannelsDocument(
        command,
        channels.stream().map(ChannelRecord::outcome).max(Outcome::compareTo).orElseThrow(),
        List.copyOf(channels),
        documents.get(0).notes());
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("notes");
  }

  /** The document of one of the channels alone. */
  public MeasurementDocument alone(ChannelRecord channel) {
    return new MeasurementDocument(
        command,
        channel.outcome(),
        channel.verdict(),
        channel.measurement(),
        channel.findings(),
        channel.comparison(),
        channel.response(),
        channel.hostCheck(),
        List.of(),
        notes,
        channel.kept());
  }

  /**
   * The same, with whether each was kept.
   *
   * @param kept one for each channel, or one for all
   */
  public ChannelsDocument withKept(List<KeptRecord> kept) {
    List<ChannelRecord> told = new ArrayList<>();
    for (int i = 0; i < channels.size(); i++) {
      told.add(channels.get(i).withKept(kept.get(Math.min(i, kept.size() - 1))));
    }
    return new ChannelsDocument(command, outcome, List.copyOf(told), notes);
  }

  private String concerns() {
    String numbers =
        channels.stream()
            .filter(c -> !c.verdict().map(VerdictRecord::isGood).orElse(true))
            .map(c -> String.valueOf(c.channel()))
            .collect(Collectors.joining(", "));
    return numbers.isEmpty() ? "" : "; not as they should be: " + numbers;
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    long measured = channels.stream().filter(c -> c.measurement().isPresent()).count();
    sheet.line("MEASURED: " + measured + " of " + channels.size() + " channels" + concerns() + ".");
    new Table<ChannelRecord>()
        .figures("channel", channel -> String.valueOf(channel.channel()))
        .figures("samples", channel -> channel.figure(ShownDelay::bareSamples))
        .figures("±", channel -> channel.figure(ShownDelay::uncertainty))
        .figures("ms", channel -> channel.figure(ShownDelay::bareMs))
        .figures("level dB", ChannelRecord::level)
        .words("outcome", ChannelRecord::remark)
        .tell(channels, sheet);
    notes.forEach(note -> sheet.row("note", note));
    return sheet.toString();
  }
}
