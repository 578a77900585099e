package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.DamagedEntry;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Keeping;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.When;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What every database must keep to. */
abstract class JournalContract {
  private static final long SEED = 20_261_125;

  /** Opens the same, at first empty, journal each time. */
  abstract Journal open() throws JournalException;

  /** Runs a statement in the database, as somebody with another tool would. */
  abstract void meddle(String sql) throws Exception;

  private static List<Entry> all(Journal journal, Selection selection) throws JournalException {
    List<Entry> found = new ArrayList<>();
    journal.each(selection, kept -> found.add(kept.entry()));
    return found;
  }

  @Test
  void whatIsStoredComesBackAfterReopening() throws Exception {
    Entry entry = Entries.entry(1);
    try (Journal journal = open()) {
      assertEquals(1, journal.append(List.of(entry)));
    }
    try (Journal journal = open()) {
      assertEquals(Optional.of(entry), journal.entry(entry.heading().id()));
      assertEquals(List.of(entry.heading()), journal.headings(Selection.ALL));
      assertEquals(List.of(entry), all(journal, Selection.ALL));
      assertEquals(List.of(), journal.check());
      assertEquals(Optional.empty(), journal.entry(new UUID(1, 1)));
    }
  }

  @Test
  void anythingCanStandInTexts() throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Entry> entries = new ArrayList<>();
    for (int n = 0; n < 200; n++) {
      entries.add(Entries.nasty(n, random));
    }
    try (Journal journal = open()) {
      assertEquals(200, journal.append(entries));
      for (Entry entry : entries) {
        assertEquals(Optional.of(entry), journal.entry(entry.heading().id()), "seed " + SEED);
      }
      assertEquals(entries, all(journal, Selection.ALL), "seed " + SEED);
      assertEquals(List.of(), journal.check());
      Heading one = entries.get(77).heading();
      assertTrue(all(journal, Selection.ofShow(one.show())).contains(entries.get(77)));
    }
  }

  @Tag("campaign")
  @Test
  void aMegabyteOfNotesIsKept() throws Exception {
    Heading heading = Entries.entry(1).heading();
    Entry entry =
        new Entry(
            heading,
            Optional.of("\u202E<&\u0000".repeat(250_000)),
            Collections.emptyMap(),
            "{}",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "0.1.0");
    try (Journal journal = open()) {
      journal.append(List.of(entry));
      assertEquals(Optional.of(entry), journal.entry(heading.id()));
    }
  }

  @Test
  void selectsByShowPathAndPartOfTheDay() throws Exception {
    Heading first = Entries.heading(1, "Friday", When.BEFORE, "vocal", 595);
    Heading second = Entries.heading(2, "Friday", When.AFTER, "vocal", 595);
    Heading third = Entries.heading(3, "Saturday", When.BEFORE, "band", 118);
    try (Journal journal = open()) {
      for (Heading heading : List.of(first, second, third)) {
        journal.append(List.of(Entries.entry(heading)));
      }
      assertEquals(List.of(first, second, third), journal.headings(Selection.ALL));
      assertEquals(List.of(first, second), journal.headings(Selection.ofShow("Friday")));
      assertEquals(List.of(third), journal.headings(Selection.ofPath("band")));
      assertEquals(
          List.of(second),
          journal.headings(
              new Selection(
                  Optional.of("Friday"),
                  Optional.empty(),
                  Optional.of(When.AFTER),
                  OptionalInt.empty())));
      Selection latest =
          new Selection(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.of(2));
      assertEquals(List.of(second, third), journal.headings(latest));
      assertEquals(
          List.of(second, third), all(journal, latest).stream().map(Entry::heading).toList());
    }
  }

  /** A clock that ran back doesn't put an entry before those that were kept before it. */
  @Test
  void entriesCountInTheOrderOfKeepingAndThoseOfOtherJournalsByTime() throws Exception {
    Heading early = Entries.heading(1, "x", When.BEFORE, "vocal", 595);
    Heading foreign = Entries.heading(2, "x", When.BEFORE, "vocal", 595);
    Heading late = Entries.heading(3, "x", When.BEFORE, "vocal", 595);
    Heading last = Entries.heading(9, "x", When.BEFORE, "vocal", 595);
    try (Journal journal = open()) {
      journal.append(List.of(Entries.entry(late), Entries.entry(early), Entries.entry(last)));
      Keeping keeping = new Keeping("other", 5, "f".repeat(64), millis(foreign));
      journal.take(List.of(new KeptEntry(Entries.entry(foreign), Optional.of(keeping))));
      assertEquals(List.of(foreign, late, early, last), journal.headings(Selection.ALL));
      assertEquals(4, journal.size());
      assertEquals(List.of(), journal.check());
      Selection latest =
          new Selection(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.of(2));
      assertEquals(List.of(early, last), journal.headings(latest));
    }
  }

  private static long millis(Heading heading) {
    return heading.at().toInstant().toEpochMilli();
  }

  @Test
  void aZoneThatThisComputerDoesNotKnowKeepsItsNameAndOffset() throws Exception {
    Heading plain = Entries.entry(1).heading();
    Heading foreign =
        new Heading(
            plain.id(),
            plain.at().withZoneSameInstant(ZoneOffset.ofHours(3)),
            plain.show(),
            plain.when(),
            plain.path(),
            plain.outcome(),
            plain.standing(),
            plain.delay(),
            plain.corrects(),
            Optional.of("Europe/Lantern"));
    try (Journal journal = open()) {
      journal.append(List.of(Entries.entry(foreign)));
      assertEquals(List.of(foreign), journal.headings(Selection.ALL));
      assertEquals(List.of(Entries.entry(foreign)), all(journal, Selection.ALL));
      assertEquals(List.of(), journal.damaged());
      assertEquals(List.of(), journal.check());
    }
  }

  @Test
  void checkFindsWhatWasTakenAwayOfItsOwnButNotOfOthers() throws Exception {
    try (Journal journal = open()) {
      for (long n = 1; n <= 6; n++) {
        journal.append(List.of(Entries.entry(n)));
      }
      Keeping keeping = new Keeping("other", 5, "f".repeat(64), 0);
      journal.take(List.of(new KeptEntry(Entries.entry(8), Optional.of(keeping))));
      assertEquals(List.of(), journal.check());
    }
    unlock();
    for (long n : new long[] {2, 3, 6}) {
      String id = "'" + Entries.entry(n).heading().id() + "'";
      meddle("DELETE FROM detail WHERE entry_id = " + id);
      meddle("DELETE FROM entry WHERE id = " + id);
    }
    try (Journal journal = open()) {
      assertEquals(
          List.of(
              "entries number 2 to 3 of this journal are missing",
              "entry number 6 of this journal is missing"),
          journal.check());
    }
  }

  @Test
  void checkFindsAnEntryThatWasExchanged() throws Exception {
    try (Journal journal = open()) {
      for (long n = 1; n <= 3; n++) {
        journal.append(List.of(Entries.entry(n)));
      }
    }
    unlock();
    String id = Entries.entry(2).heading().id().toString();
    meddle("DELETE FROM detail WHERE entry_id = '" + id + "'");
    meddle("DELETE FROM entry WHERE id = '" + id + "'");
    try (Journal journal = open()) {
      Heading other = Entries.heading(2, "Harbour, Friday", When.BEFORE, "vocal-house", 600);
      String own = ownOrigin(journal);
      Keeping keeping = new Keeping(own, 2, "f".repeat(64), 0);
      journal.take(List.of(new KeptEntry(Entries.entry(other), Optional.of(keeping))));
      assertEquals(
          List.of(
              "entry " + id + " doesn't follow number 1: one of the two was exchanged",
              "entry "
                  + Entries.entry(3).heading().id()
                  + " doesn't follow number 2: one of the two was exchanged"),
          journal.check());
    }
  }

  private static String ownOrigin(Journal journal) throws JournalException {
    List<String> origins = new ArrayList<>();
    journal.each(Selection.ALL, kept -> origins.add(kept.keeping().orElseThrow().origin()));
    return origins.get(0);
  }

  /** Every reader leaves out what isn't as it was stored, names it, and gives the rest. */
  @Test
  void damagedEntriesAreNamedAndTheRestIsRead() throws Exception {
    try (Journal journal = open()) {
      for (long n = 1; n <= 4; n++) {
        journal.append(List.of(Entries.entry(n)));
      }
    }
    unlock();
    meddle("UPDATE entry SET delay_samples = 1 WHERE number = 1");
    meddle("UPDATE entry SET zone = 'Nowhere' WHERE number = 2");
    String third = Entries.entry(3).heading().id().toString();
    meddle("UPDATE detail SET document = '{' WHERE entry_id = '" + third + "'");
    try (Journal journal = open()) {
      assertEquals(
          List.of(Entries.entry(3).heading(), Entries.entry(4).heading()),
          journal.headings(Selection.ALL));
      assertEquals(List.of(Entries.entry(4)), all(journal, Selection.ALL));
      assertEquals(
          List.of(1L, 2L, 3L).stream().map(n -> Entries.entry(n).heading().id() + "").toList(),
          journal.damaged().stream().map(DamagedEntry::id).toList());
      assertEquals(Optional.empty(), journal.entry(UUID.fromString(third)));
      assertEquals(3, journal.check().size());
    }
  }

  /** Takes away what keeps the tables from being changed, as somebody with another tool would. */
  abstract void unlock() throws Exception;

  @Test
  void storedTwiceIsPassedOverUnlessItDiffers() throws Exception {
    Entry entry = Entries.entry(1);
    Entry changed =
        Entries.entry(Entries.heading(1, "Harbour, Friday", When.BEFORE, "vocal-house", 596));
    try (Journal journal = open()) {
      journal.append(List.of(entry));
      assertEquals(1, journal.append(List.of(entry, Entries.entry(2))));
      assertThrows(
          JournalException.class, () -> journal.append(List.of(Entries.entry(3), changed)));
      assertEquals(2, journal.headings(Selection.ALL).size(), "all or nothing");
    }
  }

  @Test
  void aCorrectionRefersToWhatIsThere() throws Exception {
    Entry old = Entries.entry(1);
    Entry correction = Entries.correcting(Entries.entry(2), old.heading().id());
    try (Journal journal = open()) {
      assertThrows(JournalException.class, () -> journal.append(List.of(correction)));
      assertEquals(List.of(), journal.headings(Selection.ALL));
      assertEquals(2, journal.append(List.of(correction, old)));
      assertEquals(
          Optional.of(correction.heading().id()), journal.corrections().newer(old.heading().id()));
      assertEquals(List.of(), journal.check());
    }
  }

  @Test
  void findsByTheBeginningOfTheId() throws Exception {
    Entry one = Entries.entry(1);
    Entry other = Entries.nasty(2, new SplittableRandom(SEED));
    try (Journal journal = open()) {
      journal.append(List.of(one, other));
      String id = one.heading().id().toString();
      assertEquals(List.of(one.heading()), journal.beginning(id.substring(0, 8)));
      assertEquals(List.of(one.heading()), journal.beginning(id));
      assertEquals(2, journal.beginning("").size());
      assertEquals(List.of(), journal.beginning(id + "0"));
    }
  }

  @Test
  void nothingCanBeChangedOrTakenAway() throws Exception {
    try (Journal journal = open()) {
      journal.append(List.of(Entries.entry(1)));
    }
    for (String table : List.of("entry", "detail", "chain")) {
      assertThrows(Exception.class, () -> meddle("DELETE FROM " + table), table);
    }
    assertThrows(Exception.class, () -> meddle("UPDATE entry SET delay_samples = 1"));
    assertThrows(Exception.class, () -> meddle("UPDATE detail SET note = 'x'"));
    assertThrows(Exception.class, () -> meddle("UPDATE chain SET content = 'x'"));
  }

  @Test
  void checkFindsWhatSomebodyMeddledWith() throws Exception {
    try (Journal journal = open()) {
      journal.append(List.of(Entries.entry(1)));
    }
    meddle(
        "INSERT INTO entry (id, at_ms, zone, show_name, day_part, outcome) VALUES"
            + " ('00000000-0000-0000-0000-000000000001', 0, 'UTC', 'x', 'before', 'measured')");
    meddle(
        "INSERT INTO entry (id, at_ms, zone, show_name, day_part, outcome, corrects) VALUES"
            + " ('00000000-0000-0000-0000-000000000002', 0, 'UTC', 'x', 'before', 'measured',"
            + " '00000000-0000-0000-0000-000000000003')");
    meddle(
        "INSERT INTO detail (entry_id, setup, document, tool_version, digest) VALUES"
            + " ('00000000-0000-0000-0000-000000000002', '', '{}', '0', 'wrong')");
    try (Journal journal = open()) {
      assertEquals(
          List.of(
              "entry 00000000-0000-0000-0000-000000000002 corrects an entry that is not there",
              "entry 00000000-0000-0000-0000-000000000001 is half there: only its heading is"
                  + " stored",
              "entry 00000000-0000-0000-0000-000000000002 is not what was stored: its digest"
                  + " doesn't match",
              "of 0 entries without a number, 2 are there"),
          journal.check());
    }
  }

  @Test
  void checkTellsInWordsOfWhatCanNotBeAnEntry() throws Exception {
    try (Journal journal = open()) {
      journal.append(List.of(Entries.entry(1)));
    }
    String id = "00000000-0000-0000-0000-000000000004";
    meddle(
        "INSERT INTO entry (id, at_ms, zone, show_name, day_part, outcome, delay_samples, rate_hz)"
            + (" VALUES ('" + id + "', 0, 'UTC', 'x', 'before', 'measured', 1, 1)"));
    meddle(
        "INSERT INTO detail (entry_id, setup, document, tool_version, digest) VALUES"
            + (" ('" + id + "', '', '{}', '0', 'wrong')"));
    try (Journal journal = open()) {
      assertEquals(
          List.of(
              "entry " + id + " holds what no entry can hold",
              "of 0 entries without a number, 1 are there"),
          journal.check());
    }
  }

  @Test
  void aDatabaseOfSomethingElseIsRefused() throws Exception {
    meddle("CREATE TABLE recipes (name TEXT)");
    JournalException refused = assertThrows(JournalException.class, this::open);
    assertTrue(refused.getMessage().contains("something else is kept there"), refused.toString());
  }

  @Test
  void aNewerStoreIsLeftAlone() throws Exception {
    open().close();
    meddle(
        "INSERT INTO journal_version (installed_rank, version, description, type, script,"
            + " installed_by, execution_time, success) VALUES (99, '99', 'x', 'SQL', 'x', 'x', 0,"
            + " true)");
    JournalException refused = assertThrows(JournalException.class, this::open);
    assertTrue(refused.getMessage().contains("version 99"), refused.getMessage());
  }

  @Test
  void twoWritersLoseNothing() throws Exception {
    open().close();
    ExecutorService writers = Executors.newFixedThreadPool(2);
    List<Future<?>> done = new ArrayList<>();
    for (int writer = 0; writer < 2; writer++) {
      long first = 1000L * writer;
      done.add(
          writers.submit(
              () -> {
                for (long n = 0; n < 25; n++) {
                  try (Journal journal = open()) {
                    journal.append(List.of(Entries.entry(first + n)));
                  }
                }
                return null;
              }));
    }
    writers.shutdown();
    assertTrue(writers.awaitTermination(60, TimeUnit.SECONDS));
    for (Future<?> writer : done) {
      writer.get();
    }
    try (Journal journal = open()) {
      assertEquals(50, journal.headings(Selection.ALL).size());
      assertEquals(List.of(), journal.check());
    }
  }
}
