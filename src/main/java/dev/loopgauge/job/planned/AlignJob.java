package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.plan.AlignRequest;
import dev.loopgauge.plan.Alignment;
import dev.loopgauge.plan.DeskStep;
import dev.loopgauge.plan.MeasuredLoop;
import dev.loopgauge.report.planned.AlignmentCsv;
import dev.loopgauge.report.planned.AlignmentDocument;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Says what delay to add to each path so that the paths of each mix meet.
 *
 * @param chainFile the chain file
 * @param to the path to meet in the mixes that have it; empty for the latest of each mix
 * @param step the steps in which the desk sets delays, such as samples, 0.1ms, 0.01m or 1ft
 * @param mayDelay the performers that may hear later, who are left alone otherwise
 * @param longestMs the longest delay that the desk can set, in ms, above 0
 * @param measured documents of measured paths, in place of the prediction
 * @param show the show whose measured delays are taken from the journal
 * @param when which part of that show's day; empty for that of the last readings
 * @param journal the journal; empty for the default one
 * @param table where to write the result as CSV
 */
public record AlignJob(
    Path chainFile,
    Optional<String> to,
    String step,
    Set<Listener> mayDelay,
    OptionalDouble longestMs,
    List<Path> measured,
    Optional<String> show,
    Optional<When> when,
    Optional<String> journal,
    Optional<Path> table) {
  /** Copies the documents' names. */
  public AlignJob {
    mayDelay = Set.copyOf(mayDelay);
    measured = List.copyOf(measured);
  }

  /**
   * Aligns.
   *
   * @throws ChainFormatException when the file is not a chain
   * @throws JournalException when the journal can't be read
   * @throws UsageException when a file can't be read or written, or an option doesn't fit the chain
   */
  public Answer run(Map<String, String> environment) throws ChainFormatException, JournalException {
    Chain chain = ChainFile.read(chainFile);
    AlignmentDocument document =
        AlignmentDocument.of(chain, alignment(chain, environment), table.map(Path::toString));
    table.ifPresent(file -> TextFile.writeNew(file, AlignmentCsv.of(document)));
    return Answer.inside(document.isGood(), document);
  }

  private Alignment alignment(Chain chain, Map<String, String> environment)
      throws JournalException {
    if (chain.mixes().isEmpty()) {
      throw new UsageException(
          "expected mixes in " + chainFile + ", found none",
          "say which paths are heard together, for example mixes: { front: [house, wedge] }");
    }
    to.ifPresent(path -> checkTarget(chain, path));
    DeskStep steps = Refusals.asUsage(() -> DeskStep.parse(step));
    AlignRequest all =
        AlignRequest.of(chain, loops(chain, environment), to, steps).delaying(mayDelay);
    return Alignment.of(
        longestMs.isPresent() ? Refusals.asUsage(() -> all.atMost(longestMs.getAsDouble())) : all);
  }

  private Map<String, MeasuredLoop> loops(Chain chain, Map<String, String> environment)
      throws JournalException {
    if (show.isEmpty() && when.isPresent()) {
      throw new UsageException("expected --show with --when, found none", "name the show");
    }
    if (show.isEmpty()) {
      return MeasuredFiles.loops(chain, measured);
    }
    if (!measured.isEmpty()) {
      throw new UsageException(
          "expected --show or --measured, found both", "leave one of them out");
    }
    String place = JournalName.of(journal, environment);
    try (Journal opened = Journals.openExisting(place, environment)) {
      JournalQueries journal = new JournalQueries(opened);
      Map<String, MeasuredLoop> loops = new ShowLoops(chain, show.get(), when).in(journal);
      journal.requireWhole();
      return loops;
    }
  }

  private static void checkTarget(Chain chain, String path) {
    chain.path(path);
    boolean mixed =
        chain.mixes().values().stream()
            .flatMap(mix -> mix.entries().stream())
            .anyMatch(entry -> entry.path().equals(path));
    if (!mixed) {
      throw new UsageException(
          "expected --to with a path of a mix, found " + path + ", which is in none",
          "choose a path of one of the mixes " + String.join(", ", chain.mixes().keySet()));
    }
  }
}
