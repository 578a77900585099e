package dev.loopgauge.cli;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.chain.ChainFormatException;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.report.MeasurementDocument;
import dev.loopgauge.verify.HostCheck;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Finds the delay between two recorded channels. */
@Command(
    description = "Find the delay between two recorded channels, and compare it with a budget.",
    footer = {
      "",
      "Channels count from 1. Both recordings are taken to start at the same instant.",
      "The reference may be the stimulus or any programme that was recorded along."
    })
final class AnalyzeCommand implements Subcommand {
  private static final double LONGEST_DELAY = 60;

  @Option(
      names = "--reference",
      required = true,
      paramLabel = "FILE",
      description = "The recording of what was sent.")
  private Path reference = Path.of("");

  @Option(
      names = "--reference-channel",
      paramLabel = "N",
      defaultValue = "1",
      converter = Converters.Count.class,
      description = "Its channel (${DEFAULT-VALUE}).")
  private int referenceChannel;

  @Option(
      names = "--return",
      paramLabel = "FILE",
      description = "The recording of what came back; left out, the same file.")
  private Optional<Path> returned = Optional.empty();

  @Option(
      names = "--return-channel",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "Its channel (1, or 2 of the same file).")
  private Optional<Integer> returnChannel = Optional.empty();

  @Option(
      names = "--max-delay",
      paramLabel = "SECONDS",
      defaultValue = "1",
      converter = Converters.Positive.class,
      description = "The longest delay to look for, up to 60 (${DEFAULT-VALUE}).")
  private double maxDelaySeconds;

  @Mixin private final BudgetOptions budget = new BudgetOptions();
  @Mixin private final HostCheckOptions host = new HostCheckOptions();

  @Option(
      names = "--bypassed",
      paramLabel = "FILE",
      description = "The same again with the plug-in bypassed: what does it add?")
  private Optional<Path> bypassed = Optional.empty();

  @Override
  public Answer answer() throws AudioFileException, ChainFormatException {
    if (maxDelaySeconds > LONGEST_DELAY) {
      throw new UsageException(
          "expected --max-delay of at most 60 seconds, found " + maxDelaySeconds,
          "shift the recordings against each other first");
    }
    Optional<ChosenPath> chosen = ChainFile.chosen(budget);
    Recording active = read(reference, returned);
    if (bypassed.isEmpty()) {
      return answer(active, chosen, host.check(active.estimate()));
    }
    Recording without =
        returned.isEmpty() || returned.get().equals(reference)
            ? read(bypassed.get(), Optional.empty())
            : read(reference, bypassed);
    ActiveAndBypassed both = new ActiveAndBypassed(active.estimate(), without.estimate());
    return answer(new Recording(both.estimate(), active.notes()), chosen, both.check(host));
  }

  /** One pair of channels: its delay and what to know about it. */
  private record Recording(Estimate estimate, List<String> notes) {}

  private Recording read(Path sent, Optional<Path> back) throws AudioFileException {
    int number = returnChannel.orElse(back.isPresent() ? 1 : 2);
    try (Recordings recordings =
        new Recordings(
            new RecordedChannel(sent, referenceChannel),
            new RecordedChannel(back.orElse(sent), number))) {
      Optional<Finding> mismatch = recordings.rateMismatch();
      if (mismatch.isPresent()) {
        return new Recording(new Estimate.Refused(List.of(mismatch.get())), List.of());
      }
      Excerpt excerpt = recordings.excerpt(maxDelaySeconds);
      Estimate estimate = new DelayEstimator(maxDelaySeconds).estimate(List.of(excerpt.reading()));
      return new Recording(estimate, notes(estimate, excerpt));
    }
  }

  private List<String> notes(Estimate estimate, Excerpt excerpt) {
    List<String> notes = new ArrayList<>(excerpt.notes());
    if (estimate instanceof Estimate.Refused) {
      String searched = BigDecimal.valueOf(maxDelaySeconds).stripTrailingZeros().toPlainString();
      notes.add("delays up to " + searched + " s were looked for; --max-delay looks further");
    }
    return notes;
  }

  private static Answer answer(
      Recording read, Optional<ChosenPath> chosen, Optional<HostCheck> check) {
    return Answer.measured(
        new MeasurementDocument(
            "analyze",
            read.estimate(),
            chosen.flatMap(path -> path.compare(read.estimate())),
            check,
            read.notes()));
  }
}
