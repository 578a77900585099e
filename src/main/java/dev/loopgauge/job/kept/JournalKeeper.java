package dev.loopgauge.job.kept;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.cli.command.LoopgaugeCommand;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.JournalOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.recorded.PackedRecording;
import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.measured.StatesDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Keeps what a command found in the journal, if that was asked. */
public final class JournalKeeper {
  private final JournalOptions options;
  private final BudgetOptions budget;
  private final Console console;

  /** A keeper for one command. */
  public JournalKeeper(JournalOptions options, BudgetOptions budget, Console console) {
    this.options = options;
    this.budget = budget;
    this.console = console;
  }

  /** One result to be kept. */
  private record Kept(Optional<String> path, Document document) {}

  /**
   * Keeps an answer. What can't be kept is still the answer, but exits with 5 and says why on the
   * error stream.
   *
   * @param card what was measured with, where there was a session
   * @param recording the recording to keep beside the journal, if that was asked
   */
  public Answer keep(
      Answer answer, Optional<SessionInfo> card, Optional<PackedRecording> recording) {
    if (!options.asked()) {
      return answer;
    }
    String place = options.place(console.environment());
    try {
      Path folder = Path.of(place).toAbsolutePath().getParent();
      if (options.journal.filter(String::isEmpty).isPresent() && folder != null) {
        Files.createDirectories(folder);
      }
      List<Entry> entries = new ArrayList<>();
      try (Journal journal = Journals.open(place, console.environment())) {
        Optional<UUID> corrected = corrected(journal);
        for (Kept kept : split(answer.document())) {
          entries.add(entry(kept, card, corrected, place, recording));
        }
        journal.append(entries);
      }
      entries.forEach(
          entry ->
              console.err().println("Kept in the journal as " + entry.heading().shortId() + "."));
      return answer;
    } catch (JournalException e) {
      return notKept(answer, e.getMessage(), e.hint());
    } catch (AudioFileException e) {
      return notKept(answer, e.getMessage(), e.hint());
    } catch (UsageException e) {
      return notKept(answer, e.getMessage(), e.hint());
    } catch (IOException | InvalidPathException e) {
      return notKept(
          answer, "the journal " + place + " can't be written: " + e, "is the disk full?");
    }
  }

  private Answer notKept(Answer answer, String text, String hint) {
    console.err().println("NOT KEPT: " + text);
    console.err().println("  try  " + hint);
    return new Answer(ExitCode.JOURNAL, answer.document());
  }

  /** Several channels are one entry each; a channel's path says which it is. */
  private List<Kept> split(Document document) {
    if (document instanceof ChannelsDocument channels) {
      return channels.channels().stream()
          .map(c -> new Kept(Optional.of(channelPath(c.number())), c.document()))
          .toList();
    }
    return List.of(new Kept(budget.path, document));
  }

  private String channelPath(int channel) {
    return budget.path.map(path -> path + ", return " + channel).orElse("return " + channel);
  }

  private Optional<UUID> corrected(Journal journal) throws JournalException {
    if (options.corrected.isEmpty()) {
      return Optional.empty();
    }
    String start = options.corrected.get();
    List<UUID> found = journal.beginning(start).stream().map(Heading::id).toList();
    if (found.size() != 1) {
      throw new JournalException(
          "expected one entry to correct, found %d whose id starts with %s"
              .formatted(found.size(), start),
          "`loopgauge journal list` shows the ids");
    }
    return Optional.of(found.get(0));
  }

  private Entry entry(
      Kept kept,
      Optional<SessionInfo> card,
      Optional<UUID> corrected,
      String place,
      Optional<PackedRecording> recording)
      throws IOException, AudioFileException {
    UUID id = UUID.randomUUID();
    Optional<KeptCapture> capture = Optional.empty();
    if (recording.isPresent()) {
      capture = Optional.of(recording.get().keep(PackedRecording.folderOf(place), id));
    }
    Heading heading =
        new Heading(
            id,
            ZonedDateTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.MILLIS),
            options.show.orElseThrow(),
            options.when.orElseThrow(),
            kept.path(),
            String.valueOf(kept.document().json().get("outcome")),
            measurement(kept.document()).map(JournalKeeper::logged),
            corrected);
    return new Entry(
        heading,
        options.note,
        options.setup,
        Json.write(kept.document()),
        budget.chain.map(JournalKeeper::chain),
        card.map(JournalKeeper::card),
        capture,
        LoopgaugeCommand.Version.number());
  }

  private static Optional<Measurement> measurement(Document document) {
    if (document instanceof MeasurementDocument measured) {
      return measured.measurement();
    }
    if (document instanceof StatesDocument states) {
      return states.measured().measurement();
    }
    return document instanceof SoakDocument soak ? soak.soak().level() : Optional.empty();
  }

  private static LoggedDelay logged(Measurement measurement) {
    return new LoggedDelay(measurement.delay(), measurement.uncertaintySamples());
  }

  private static ChainText chain(Path file) {
    return new ChainText(
        file.toString(),
        TextFile.read(file, "chain file", ChainParser.LONGEST_FILE, "it was there a moment ago"));
  }

  private static SoundCard card(SessionInfo info) {
    return new SoundCard(
        info.backend(),
        info.output(),
        info.input(),
        info.rate(),
        Math.max(1, info.bufferSamples()));
  }
}
