package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.outside.Mount;
import dev.loopgauge.outside.NeedsTool;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Real disks that are full, or that can't be written. */
@NeedsTool("unshare")
@Timeout(120)
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

  /** What a writer says there. */
  private List<String> said(Mount mount, long first, long count) throws IOException {
    List<String> command = mount.around(Writer.command(file().toString(), first, count));
    return new ProcessBuilder(command)
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start()
        .inputReader(StandardCharsets.UTF_8)
        .lines()
        .toList();
  }

  @Test
  void aFullDiskKeepsWhatWasReportedAndNothingElse() throws Exception {
    List<String> said = said(Mount.smallDisk(folder, 512, copies), 0, Writer.ENDLESS);
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

  /** Starts a writer for each number, and waits for all. */
  private static final String WRITERS =
      "place=$1; said=$2; shift 2; for n in 0 1 2 3 4 5 6 7; do"
          + " \"$@\" \"$place\" \"${n}000000\" 1000000 >\"$said/$n\" & done; wait";

  @Test
  void eightWritersFillADiskAndLoseNothing() throws Exception {
    Path said = Files.createDirectory(copies.resolve("said"));
    List<String> command = new ArrayList<>(List.of("sh", "-c", WRITERS, "sh", file() + ""));
    command.add(said.toString());
    List<String> writer = Writer.command("", 0, 0);
    command.addAll(writer.subList(0, writer.size() - 3));
    Mount disk = Mount.smallDisk(folder, 2048, copies);
    assertEquals(0, new ProcessBuilder(disk.around(command)).inheritIO().start().waitFor());
    try (Journal journal =
        Journals.openExisting(copies.resolve("journal.db").toString(), Map.of())) {
      int stored = 0;
      for (int n = 0; n < 8; n++) {
        List<String> lines = Files.readAllLines(said.resolve("" + n));
        String last = lines.get(lines.size() - 1);
        assertTrue(
            last.contains("the disk is full") || last.contains("not be written to the end"), last);
        for (int entry = 0; entry < lines.size() - 1; entry++) {
          UUID id = WriterProcess.entry(n * 1_000_000L + entry).heading().id();
          assertTrue(journal.entry(id).isPresent(), "lost: entry " + entry + " of writer " + n);
        }
        stored += lines.size() - 1;
      }
      assertEquals(stored, journal.headings(Selection.ALL).size());
      assertEquals(List.of(), journal.check());
      assertTrue(stored > 20, stored + " stored");
    }
  }

  /** The tables take some 70 kilobytes. */
  @ParameterizedTest
  @ValueSource(ints = {4, 16, 36})
  void noJournalBeginsOnFullDisk(int kilobytes) throws Exception {
    List<String> said = said(Mount.smallDisk(folder, kilobytes, copies), 0, 1);
    assertEquals(1, said.size(), said::toString);
    assertTrue(
        said.get(0).contains("the disk is full")
            || said.get(0).contains("not be written to the end"),
        said::toString);
    Path left = copies.resolve("journal.db");
    try (Journal journal = Journals.open(left.toString(), Map.of())) {
      assertEquals(1, journal.append(List.of(WriterProcess.entry(0))));
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
    assertEquals(List.of(), said(readOnly, 1, 0));
    assertEquals(
        List.of(WriterProcess.FAILED + "the journal " + file() + " may only be read"),
        said(readOnly, 1, 1));
    assertArrayEquals(before, Files.readAllBytes(file()));
  }

  @Test
  void noJournalBeginsInReadOnlyFolder() throws Exception {
    List<String> said = said(Mount.readOnly(folder), 1, 1);
    assertEquals(
        List.of(WriterProcess.FAILED + "the journal " + file() + " can't be opened"), said);
  }
}
