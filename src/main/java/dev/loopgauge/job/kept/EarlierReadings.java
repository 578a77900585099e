package dev.loopgauge.job.kept;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.kind.Documents;
import dev.loopgauge.report.measured.MeasurementDocument;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a journal holds already of a show and a part of its day. */
public final class EarlierReadings {
  private EarlierReadings() {}

  /**
   * The last trusted measurement of each path.
   *
   * @param choice names the journal, the show and the part of its day
   * @throws JournalException when the journal can't be read
   */
  public static Map<String, MeasurementDocument> of(
      KeepChoice choice, Map<String, String> environment) throws JournalException {
    Map<String, MeasurementDocument> readings = new LinkedHashMap<>();
    try (Journal journal = Journals.openExisting(choice.place(environment), environment)) {
      Selection show = Selection.ofShow(choice.show().orElseThrow());
      for (Heading heading : new JournalQueries(journal).standing(show)) {
        if (heading.when() == choice.when().orElseThrow() && heading.path().isPresent()) {
          journal
              .entry(heading.id())
              .flatMap(EarlierReadings::trusted)
              .ifPresent(reading -> readings.put(heading.path().get(), reading));
        }
      }
    }
    return readings;
  }

  private static Optional<MeasurementDocument> trusted(Entry entry) {
    try {
      return Documents.read(Json.read(entry.document()))
          .filter(MeasurementDocument.class::isInstance)
          .map(MeasurementDocument.class::cast)
          .filter(reading -> reading.measurement().isPresent());
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }
}
