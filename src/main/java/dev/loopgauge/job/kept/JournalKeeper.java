package dev.loopgauge.job.kept;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.ProgramVersion;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.UsageException;
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
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Keeps what a command found in the journal, if that was asked. */
public final class JournalKeeper {
  private final KeepChoice choice;
  private final BudgetChoice budget;
  private final Map<String, String> environment;
  private final Person person;

  /**
   * A keeper for one job.
   *
   * @param choice whether and how to keep
   * @param budget what was compared with
   * @param environment names the journal and how to reach it, where nothing else does
   * @param person hears what was kept, or why not
   */
  public JournalKeeper(
      KeepChoice choice, BudgetChoice budget, Map<String, String> environment, Person person) {
    this.choice = choice;
    this.budget = budget;
    this.environment = environment;
    this.person = person;
  }

  /** One result to be kept. */
  private record Kept(Optional<String> path, Document document) {}

  /**
   * Keeps an answer. What can't be kept is still the answer, but it ends as not kept, and the
   * person hears why.
   *
   * @param card what was measured with, where there was a session
   * @param recording the recording to keep beside the journal, if that was asked
   */
  public Answer keep(
      Answer answer, Optional<SessionInfo> card, Optional<PackedRecording> recording) {
    if (!choice.asked()) {
      return answer;
    }
    String place = choice.place(environment);
    try {
      Path folder = Path.of(place).toAbsolutePath().getParent();
      if (choice.journal().filter(String::isEmpty).isPresent() && folder != null) {
        Files.createDirectories(folder);
      }
      List<Entry> entries = new ArrayList<>();
      try (Journal journal = Journals.open(place, environment)) {
        Optional<UUID> corrected = corrected(journal);
        for (Kept kept : split(answer.document())) {
          entries.add(entry(kept, card, corrected, place, recording));
        }
        journal.append(entries);
      }
      entries.forEach(
          entry -> person.say("Kept in the journal as " + entry.heading().shortId() + "."));
      return answer;
    } catch (JournalException e) {
      return notKept(answer, e.getMessage(), e.hint());
    } catch (AudioFileException e) {
      return notKept(answer, e.getMessage(), e.hint());
    } catch (UsageException e) {
      return notKept(answer, e.getMessage(), e.hint());
    } catch (IOException e) {
      return notKept(
          answer,
          "the journal " + place + " can't be written: " + FileTrouble.reason(e),
          "is the disk full, may you write there?");
    } catch (InvalidPathException e) {
      return notKept(
          answer, "no file can be called " + e.getInput() + ": " + e.getReason(), "name another");
    }
  }

  private Answer notKept(Answer answer, String text, String hint) {
    person.say("NOT KEPT: " + text);
    person.say("  try  " + hint);
    return new Answer(Ending.NOT_KEPT, answer.document());
  }

  /** Several channels are one entry each; a channel's path says which it is. */
  private List<Kept> split(Document document) {
    if (document instanceof ChannelsDocument channels) {
      return channels.channels().stream()
          .map(c -> new Kept(Optional.of(channelPath(c.channel())), channels.alone(c)))
          .toList();
    }
    return List.of(new Kept(budget.path(), document));
  }

  private String channelPath(int channel) {
    return budget.path().map(path -> path + ", return " + channel).orElse("return " + channel);
  }

  private Optional<UUID> corrected(Journal journal) throws JournalException {
    if (choice.corrected().isEmpty()) {
      return Optional.empty();
    }
    String start = choice.corrected().get();
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
    KeptFacts facts = KeptFacts.of(kept.document());
    Heading heading =
        new Heading(
            id,
            ZonedDateTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.MILLIS),
            choice.show().orElseThrow(),
            choice.when().orElseThrow(),
            kept.path(),
            facts.outcome(),
            facts.standing(),
            facts.delay().map(JournalKeeper::logged),
            corrected);
    return new Entry(
        heading,
        choice.note(),
        choice.setup(),
        Json.write(kept.document()),
        budget.chain().map(JournalKeeper::chain),
        card.map(JournalKeeper::card),
        capture,
        ProgramVersion.number());
  }

  private static LoggedDelay logged(ShownDelay delay) {
    SampleRate rate = new SampleRate((int) delay.rateHz());
    return new LoggedDelay(new Latency(delay.samples(), rate), delay.uncertaintySamples());
  }

  private static ChainText chain(Path file) {
    return new ChainText(
        file.getFileName().toString(),
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
