package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.ArrivalOption;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.ChannelList;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.option.JournalOptions;
import dev.loopgauge.cli.option.RecordingOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.Progress;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.recorded.AnalyzeChannels;
import dev.loopgauge.job.recorded.AnalyzePairs;
import dev.loopgauge.job.recorded.AnalyzeTrack;
import dev.loopgauge.job.recorded.PackedRecording;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds the delay between recorded channels. */
@Command(
    sortOptions = false,
    description = "Find the delay between recorded channels, and compare it with a budget.",
    footer = {
      "",
      "Channels count from 1. Recordings are taken to start at the same instant.",
      "The reference may be the stimulus or any programme that was recorded along.",
      "With several return channels the exit code is the worst of them; with --pairs",
      "it is 0 when at least one pair has something in common."
    })
public final class AnalyzeCommand implements Subcommand {
  private final Console console;

  @Mixin private final RecordingOptions recording = new RecordingOptions();
  @Mixin private final ArrivalOption arrival = new ArrivalOption();
  @Mixin private final BudgetOptions budget = new BudgetOptions();
  @Mixin private final HostCheckOptions host = new HostCheckOptions();
  @Mixin private final JournalOptions journal = new JournalOptions();

  @Option(
      names = "--bypassed",
      paramLabel = "FILE",
      description = "The same again with the plug-in bypassed: what does it add?")
  private Optional<Path> bypassed = Optional.empty();

  @Option(
      names = "--track",
      paramLabel = "SECONDS",
      converter = Converters.Positive.class,
      description = "Follow the delay through the recording in windows of 0.5 to 30 seconds.")
  private Optional<Double> track = Optional.empty();

  @Option(
      names = "--pairs",
      description = "Find the delay between every two channels of FILE by its own sound.")
  private boolean pairs;

  @Option(
      names = "--channels",
      paramLabel = "LIST",
      converter = ChannelList.Converter.class,
      description = "With --pairs: which channels (all), such as 1-8 or 1,3,5-7.")
  private Optional<ChannelList> chosen = Optional.empty();

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "With --pairs: the recording.")
  private Optional<Path> file = Optional.empty();

  /** A command on a console. */
  public AnalyzeCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws Exception {
    journal.check();
    if (pairs && journal.asked()) {
      throw new UsageException(
          "--pairs measures no path to keep", "leave --journal out, or measure one path");
    }
    Answer answer = analyzed();
    Optional<PackedRecording> packed =
        journal.keepCapture
            ? recording.returned.or(() -> recording.reference).map(PackedRecording::ofFile)
            : Optional.empty();
    return new JournalKeeper(journal, budget, console).keep(answer, Optional.empty(), packed);
  }

  private Answer analyzed() throws Exception {
    refuseMixtures();
    double maxDelay = recording.maxDelay();
    if (pairs) {
      Path recorded =
          file.orElseThrow(
              () -> new UsageException("--pairs without a file", "name the recording: FILE"));
      return new AnalyzePairs(recorded, chosen, maxDelay).answer(new Progress(console, "pairs"));
    }
    if (track.isPresent()) {
      return new AnalyzeTrack(recording, track.get(), journal.chosen(budget))
          .answer(new Progress(console, "track"));
    }
    AnalyzeChannels channels =
        new AnalyzeChannels(
            recording, arrival.choice(), journal.chosen(budget), new Progress(console, "channels"));
    return recording.returnChannels().size() == 1 ? channels.one(bypassed, host) : channels.many();
  }

  private void refuseMixtures() {
    if (pairs && (track.isPresent() || recording.reference.isPresent())) {
      throw new UsageException(
          "expected --pairs or a reference, found both",
          "with --pairs every channel is held against every other: leave the other options out");
    }
    if (!pairs && (chosen.isPresent() || file.isPresent())) {
      throw new UsageException(
          "expected --pairs with --channels and FILE, found none",
          "for one reference and several returns: --reference FILE --return-channel LIST");
    }
    boolean many = recording.returnChannels().size() > 1;
    if (bypassed.isPresent() && (pairs || track.isPresent() || many)) {
      throw new UsageException(
          "--bypassed goes with one delay, found several", "name one --return-channel");
    }
    if (track.isPresent() && many) {
      throw new UsageException(
          "--track follows one return channel, found several", "track them one after the other");
    }
  }
}
