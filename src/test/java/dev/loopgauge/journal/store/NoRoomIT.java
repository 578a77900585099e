package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.outside.NeedsTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Real disks that are full, or that can't be written. */
@NeedsTool("unshare")
@Timeout(60)
class NoRoomIT {
  @TempDir Path folder;
  @TempDir Path copies;

  private Path file() {
    return folder.resolve("journal.db");
  }

  @BeforeEach
  void mountsAreAllowed() throws Exception {
    assumeTrue(Mount.readOnly(folder).isAllowed(), "nothing can be mounted here");
  }

  @Test
  void aFullDiskKeepsWhatWasReportedAndNothingElse() throws Exception {
    List<String> said =
        Mount.smallDisk(folder, 512, copies)
            .run(Writer.command(file().toString(), 0, Writer.ENDLESS));
    int stored = said.size() - 1;
    assertEquals(
        WriterProcess.FAILED + "the journal " + file() + " can't grow: the disk is full",
        said.get(stored));
    assertTrue(stored > 2, said::toString);
    try (Journal journal =
        Journals.openExisting(copies.resolve("journal.db").toString(), Map.of())) {
      assertEquals(stored, journal.headings(Selection.ALL).size());
      assertEquals(List.of(), journal.check());
    }
  }

  @Test
  void aReadOnlyFolderCanBeReadAndIsNotWritten() throws Exception {
    try (Journal journal = Journals.open(file().toString(), Map.of())) {
      journal.append(List.of(WriterProcess.entry(0)));
    }
    byte[] before = Files.readAllBytes(file());
    Mount readOnly = Mount.readOnly(folder);
    assertEquals(List.of(), readOnly.run(Writer.command(file().toString(), 1, 0)));
    assertEquals(
        List.of(WriterProcess.FAILED + "the journal " + file() + " may only be read"),
        readOnly.run(Writer.command(file().toString(), 1, 1)));
    assertArrayEquals(before, Files.readAllBytes(file()));
  }

  @Test
  void noJournalBeginsInReadOnlyFolder() throws Exception {
    List<String> said = Mount.readOnly(folder).run(Writer.command(file().toString(), 1, 1));
    assertEquals(
        List.of(WriterProcess.FAILED + "the journal " + file() + " can't be opened"), said);
  }
}
