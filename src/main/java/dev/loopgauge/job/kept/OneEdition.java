package dev.loopgauge.job.kept;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.logged.KeptDocument;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Numbers of a path by one edition of what the delay means. Where some are of an older edition, all
 * of those are read anew from their recordings, or none: a mixture would show steps that nothing
 * made.
 *
 * @param read the numbers that were read anew, by their entries
 * @param note what is to be known of that, in a sentence
 */
record OneEdition(Map<UUID, Rereading.Read> read, Optional<String> note) {
  /** Each takes a good part of a second, and a history shows as many. */
  private static final int MOST = 20;

  /** No number is read anew. */
  static final OneEdition AS_KEPT = new OneEdition(Map.of(), Optional.empty());

  /**
   * Reads what is needed.
   *
   * @param entries the last entries of a path
   * @param whole whether these are all of them
   * @param rereading reads recordings
   */
  static OneEdition of(List<Entry> entries, boolean whole, Rereading rereading) {
    List<Entry> older = entries.stream().filter(OneEdition::isOlder).toList();
    if (older.isEmpty() || older.size() == numbered(entries)) {
      return AS_KEPT;
    }
    boolean goesOn = !whole && older.contains(entries.get(0));
    if (goesOn || older.size() > MOST) {
      return stand("there are too many to read their recordings anew each time", older.size());
    }
    Map<UUID, Rereading.Read> read = new LinkedHashMap<>();
    for (Entry entry : older) {
      Rereading.Result result = rereading.of(entry);
      if (!(result instanceof Rereading.Read anew)) {
        String why = result instanceof Rereading.Unread unread ? unread.why() : "it has no number";
        return stand("of entry " + entry.heading().shortId() + " " + why, older.size());
      }
      read.put(entry.heading().id(), anew);
    }
    String count = older.size() == 1 ? "1 number was" : older.size() + " numbers were";
    return new OneEdition(
        read,
        Optional.of(
            count + " of an older edition of what the delay means; recordings were read anew"));
  }

  private static OneEdition stand(String why, int older) {
    String count = older == 1 ? "1 number is" : older + " numbers are";
    return new OneEdition(
        Map.of(),
        Optional.of(
            "%s of an older edition of what the delay means and stand%s, since %s"
                .formatted(count, older == 1 ? "s" : "", why)));
  }

  private static boolean isOlder(Entry entry) {
    return entry.heading().delay().isPresent()
        && KeptDocument.of(entry)
            .edition()
            .filter(edition -> !edition.equals(Measurement.DEFINITION))
            .isPresent();
  }

  private static long numbered(List<Entry> entries) {
    return entries.stream().filter(entry -> entry.heading().delay().isPresent()).count();
  }

  /** A heading with the number that counts. */
  Heading of(Heading heading) {
    return read.containsKey(heading.id()) ? read.get(heading.id()).heading() : heading;
  }

  /** The document with the number that counts. */
  KeptDocument document(Entry entry) {
    UUID id = entry.heading().id();
    return read.containsKey(id) ? read.get(id).document() : KeptDocument.of(entry);
  }
}
