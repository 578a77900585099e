package dev.loopgauge.job.kept;

import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.AspectChanges;
import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Causes;
import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.report.logged.KeptDocument;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Explanation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Compares entries of a journal two by two, by one edition of what the delay means: where an older
 * one's recording was kept, it is read anew.
 *
 * @param rereading reads such recordings
 * @param places the entries that the pairs are of, in their places
 */
public record KeptPairs(Journal journal, Rereading rereading, List<Placed> places) {
  private static final Cause CARD =
      new Cause(
          Method.UNCALIBRATED.label(),
          "the sound card's own delay is in the numbers and may be what moved;"
              + " measure with a reference",
          Cause.Standing.RECORDED);

  private static final Cause EDITION =
      new Cause(
          "edition",
          "the two numbers are of different editions of what the delay means: a path with a filter"
              + " reads otherwise; `loopgauge journal reread` reads kept recordings by the new one",
          Cause.Standing.RECORDED);

  private static final Cause CLOCKS =
      new Cause(
          Explanation.DRIFT,
          "the clocks ran apart, so that each reading gave another delay;"
              + " sync both devices to one word clock and measure again",
          Cause.Standing.EXPLAINS);

  /**
   * An entry and its document, both as read anew where they were.
   *
   * @param heading what the entry is compared by
   * @param unread why an older edition's number stands, where it does
   * @param readAnew whether the recording was read by the edition that counts now
   */
  private record Side(
      Entry entry,
      Heading heading,
      KeptDocument document,
      Optional<String> unread,
      boolean readAnew) {
    static Side by(OneEdition edition, Entry entry) {
      Heading heading = edition.of(entry.heading());
      return new Side(entry, heading, edition.document(entry), Optional.empty(), false);
    }

    boolean holdsTheCard() {
      return KeptDocument.of(entry).method().equals(Optional.of(Method.UNCALIBRATED.label()));
    }
  }

  private Side side(Entry entry) {
    Rereading.Result result = rereading.of(entry);
    if (result instanceof Rereading.Read read) {
      return new Side(entry, read.heading(), read.document(), Optional.empty(), true);
    }
    Optional<String> unread =
        result instanceof Rereading.Unread why ? Optional.of(why.why()) : Optional.empty();
    return new Side(entry, entry.heading(), KeptDocument.of(entry), unread, false);
  }

  /**
   * What is not as it was between the measurements of each pair, and why.
   *
   * @throws JournalException when the journal can't be read
   */
  public List<Compared> compared(List<PathPair> pairs) throws JournalException {
    List<Compared> compared = new ArrayList<>();
    for (PathPair pair : pairs) {
      compared.add(compared(pair));
    }
    return compared;
  }

  private Compared compared(PathPair pair) throws JournalException {
    Optional<Side> before = side(pair.first());
    Optional<Side> after = side(pair.second());
    if (before.isEmpty() || after.isEmpty()) {
      return new Compared(pair, List.of(), List.of(), placeNotes(pair));
    }
    return compared(pair, before.get(), after.get());
  }

  private Compared compared(PathPair asKept, Side before, Side after) {
    PathPair pair =
        new PathPair(asKept.path(), Optional.of(before.heading()), Optional.of(after.heading()));
    List<AspectChange> changes =
        AspectChanges.between(pair, before.document().summary(), after.document().summary());
    boolean moved = changes.stream().anyMatch(AspectChange.Delay.class::isInstance);
    List<Cause> causes =
        moved
            ? causes(pair, before, after)
            : changes.isEmpty() ? List.of() : Causes.recorded(before.entry(), after.entry());
    List<String> notes = new ArrayList<>(notes(before, after));
    notes.addAll(placeNotes(asKept));
    return new Compared(pair, changes, causes, notes);
  }

  private List<String> placeNotes(PathPair pair) {
    return Stream.of(pair.first(), pair.second())
        .flatMap(Optional::stream)
        .flatMap(side -> places.stream().flatMap(placed -> placed.notes(side.id()).stream()))
        .toList();
  }

  private static List<String> notes(Side before, Side after) {
    List<String> notes = new ArrayList<>();
    note("the first", before, after, notes);
    note("the second", after, before, notes);
    return notes;
  }

  /** Two numbers of one older edition are compared as they are, and nothing need be said. */
  private static void note(String which, Side side, Side other, List<String> notes) {
    if (side.readAnew()) {
      notes.add(
          "%s number was of an older edition of what the delay means; its recording was read anew"
              .formatted(which));
    } else if (side.unread().isPresent() && other.unread().isEmpty()) {
      notes.add(
          "%s number is of an older edition of what the delay means, and stands, since %s"
              .formatted(which, side.unread().get()));
    }
  }

  private Optional<Side> side(Optional<Heading> heading) throws JournalException {
    return heading.isEmpty() ? Optional.empty() : journal.entry(heading.get().id()).map(this::side);
  }

  /**
   * What may have made the delay another between two entries.
   *
   * @param edition gives their numbers by one edition
   * @throws JournalException when the journal can't be read
   */
  static List<Cause> causes(Journal journal, Heading first, Heading second, OneEdition edition)
      throws JournalException {
    Optional<Side> before = journal.entry(first.id()).map(entry -> Side.by(edition, entry));
    Optional<Side> after = journal.entry(second.id()).map(entry -> Side.by(edition, entry));
    return before.isPresent() && after.isPresent()
        ? causes(
            new PathPair(first.path(), Optional.of(first), Optional.of(second)),
            before.get(),
            after.get())
        : List.of();
  }

  private static List<Cause> causes(PathPair pair, Side before, Side after) {
    Optional<Latency> later = pair.later();
    if (later.isEmpty()) {
      return List.of();
    }
    List<Cause> causes = new ArrayList<>();
    if (!before.document().edition().equals(after.document().edition())) {
      causes.add(EDITION);
    }
    if (before.holdsTheCard() || after.holdsTheCard()) {
      causes.add(CARD);
    }
    if (AspectChanges.clocksRanApart(before.document().summary(), after.document().summary())) {
      causes.add(CLOCKS);
      causes.addAll(Causes.recorded(before.entry(), after.entry()));
    } else {
      double uncertainty = pair.shift().orElseThrow().uncertaintySamples();
      causes.addAll(Causes.of(before.entry(), after.entry(), later.get(), uncertainty));
    }
    return List.copyOf(causes);
  }
}
