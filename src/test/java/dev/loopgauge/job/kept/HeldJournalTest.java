package dev.loopgauge.job.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.store.JournalAddress;
import dev.loopgauge.journal.store.Journals;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeldJournalTest {
  @TempDir private Path folder;

  private JournalAddress address() {
    return new JournalAddress.InFile(folder.resolve("journal.db"));
  }

  private static int entries(Path file) throws JournalException {
    try (Journal journal = Journals.openExisting(file.toString(), Map.of())) {
      assertEquals(List.of(), journal.check());
      return journal.headings(Selection.ALL).size();
    }
  }

  @Test
  void isOpenedOnce() throws Exception {
    List<Journal> used = new ArrayList<>();
    try (HeldJournal held = new HeldJournal(Map.of())) {
      held.use(address(), used::add);
      held.use(address(), used::add);
    }
    assertSame(used.get(0), used.get(1));
  }

  /** Without a look at the file, the second entry would be lost with the one that is deleted. */
  @Test
  void isOpenedAnewWhereItsFileWasMovedAway() throws Exception {
    try (HeldJournal held = new HeldJournal(Map.of())) {
      held.use(address(), journal -> journal.append(List.of(Entries.entry(1))));
      Files.move(folder.resolve("journal.db"), folder.resolve("moved.db"));
      held.use(address(), journal -> journal.append(List.of(Entries.entry(2))));
    }
    assertEquals(1, entries(folder.resolve("moved.db")));
    assertEquals(1, entries(folder.resolve("journal.db")));
  }

  @Test
  void whatFailsTwiceFails() throws Exception {
    List<Journal> used = new ArrayList<>();
    try (HeldJournal held = new HeldJournal(Map.of())) {
      held.use(address(), used::add);
      JournalException failed =
          assertThrows(
              JournalException.class,
              () ->
                  held.use(
                      address(),
                      journal -> {
                        used.add(journal);
                        throw new JournalException("no", "try");
                      }));
      assertEquals("no", failed.getMessage());
      held.use(address(), journal -> journal.append(List.of(Entries.entry(1))));
    }
    assertEquals(3, used.size());
  }
}
