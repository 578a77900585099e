package dev.loopgauge.job.kept;

import dev.loopgauge.job.ProgramVersion;
import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.html.PageLayout;
import dev.loopgauge.report.html.ReadDocument;
import dev.loopgauge.report.html.ReportDocument;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where the contents of reports come from. */
public final class ReportSources {
  private ReportSources() {}

  /**
   * A report of documents in files.
   *
   * @throws UsageException when one can't be read, or is none that a report can show
   */
  public static ReportDocument ofFiles(List<Path> files) {
    List<ReadDocument> readings = files.stream().flatMap(ReportSources::readings).toList();
    List<String> sources = readings.stream().map(ReadDocument::source).distinct().toList();
    String title = sources.size() == 1 ? sources.get(0) : "Measurements";
    return new ReportDocument(title, ProgramVersion.number(), readings);
  }

  /** The document of a file; of a round, those of its paths. */
  private static Stream<ReadDocument> readings(Path file) {
    ResultFile document = ResultFile.read(file, "measure");
    List<ReadDocument> round = RoundFile.paths(file.getFileName().toString(), document.values());
    return round.isEmpty() ? Stream.of(reading(file, document)) : round.stream();
  }

  private static ReadDocument reading(Path file, ResultFile document) {
    ReadDocument reading = ReadDocument.ofFile(file.getFileName().toString(), document.values());
    if (!reading.isShown()) {
      throw document.lacks(
          "a document that a report can show",
          "give what measure, round, analyze, series, budget, plan or align printed with --json");
    }
    return reading;
  }

  /**
   * A report of a show in the journal.
   *
   * @param show the show; empty for the last one
   * @param files documents to be told of as well
   * @throws JournalException when the journal can't be read
   * @throws UsageException when there is no such show, or as {@link #ofFiles}
   */
  public static ReportDocument ofShow(Journal journal, Optional<String> show, List<Path> files)
      throws JournalException {
    List<ReadDocument> documents = files.stream().flatMap(ReportSources::readings).toList();
    Corrections corrections = journal.corrections();
    String name = show.isPresent() ? show.get() : lastShow(journal);
    List<ReadDocument> readings = new ArrayList<>(readings(journal, name, corrections));
    List<Heading> past = past(journal, readings, corrections);
    readings.addAll(documents);
    return new ReportDocument(name, ProgramVersion.number(), readings, past, PageLayout.PLAIN);
  }

  private static String lastShow(Journal journal) throws JournalException {
    Selection last =
        new Selection(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.of(1));
    return journal.headings(last).stream()
        .map(Heading::show)
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    "expected a show in the journal, found none",
                    "measure with --journal, or give documents: `loopgauge report --from FILE`"));
  }

  /** The entries of a show that no other entry replaces. */
  private static List<ReadDocument> readings(Journal journal, String show, Corrections corrections)
      throws JournalException {
    List<Entry> entries = new ArrayList<>();
    journal.each(Selection.ofShow(show), kept -> entries.add(kept.entry()));
    if (entries.isEmpty()) {
      throw new UsageException(
          "no show '" + show + "' in the journal", "`loopgauge journal list` shows them");
    }
    List<ReadDocument> readings = new ArrayList<>();
    for (Entry entry : entries) {
      if (corrections.stands(entry.heading().id())) {
        readings.add(ReadDocument.ofEntry(entry, JournalQueries.document(entry)));
      }
    }
    return readings;
  }

  /** The entries of these readings' paths, of all shows, that no other replaces. */
  private static List<Heading> past(
      Journal journal, List<ReadDocument> readings, Corrections corrections)
      throws JournalException {
    List<Heading> past = new ArrayList<>();
    for (String path : paths(readings)) {
      journal.headings(Selection.ofPath(path)).stream()
          .filter(heading -> corrections.stands(heading.id()))
          .forEach(past::add);
    }
    return past;
  }

  private static Set<String> paths(List<ReadDocument> readings) {
    return readings.stream()
        .flatMap(reading -> reading.entry().stream())
        .flatMap(entry -> entry.heading().path().stream())
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
