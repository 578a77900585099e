package dev.loopgauge.job.kept;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.NewEntries.Result;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.logged.AddDocument;
import dev.loopgauge.report.logged.Logs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Keeps what a command printed as JSON: a result that could not be kept when it was measured.
 *
 * @param file the document; of a round, those of its paths
 * @param choice the show, its part of the day, and what else is to be said
 * @param budget the chain file and the path, where the document doesn't name one
 */
public record AddJob(Path file, KeepChoice choice, BudgetChoice budget) {
  /**
   * Does it. A document doesn't say when it was measured: the file's own time counts.
   *
   * @param name what documents call the journal
   * @throws JournalException when the journal can't be read or written
   * @throws UsageException when the file holds no result
   * @throws IOException when the file can't be read
   */
  public Answer in(Journal journal, String name) throws JournalException, IOException {
    List<Result> results =
        new PrintedResults(ResultFile.read(file, "measure"), name).all(budget.path());
    ZonedDateTime at = Files.getLastModifiedTime(file).toInstant().atZone(ZoneId.systemDefault());
    List<String> there = new ArrayList<>();
    List<Result> fresh = new ArrayList<>();
    for (Result result : results) {
      if (journal.entry(result.id()).isPresent()) {
        there.add(result.id().toString());
      } else {
        fresh.add(result);
      }
    }
    append(journal, fresh, at);
    List<String> added = fresh.stream().map(result -> result.id().toString()).toList();
    return Answer.good(AddDocument.of(added, there, notes(fresh, at)));
  }

  private void append(Journal journal, List<Result> fresh, ZonedDateTime at)
      throws JournalException {
    if (fresh.isEmpty()) {
      return;
    }
    Optional<UUID> corrected = new Correction(choice, journal).of(fresh);
    NewEntries entries =
        new NewEntries(choice, budget, at, Optional.empty(), Optional.empty(), corrected);
    List<Entry> made = fresh.stream().map(entries::of).toList();
    journal.append(made);
  }

  private static List<String> notes(List<Result> fresh, ZonedDateTime at) {
    return fresh.isEmpty()
        ? List.of()
        : List.of("Dated %s, when its file was written.".formatted(Logs.brief(at)));
  }
}
