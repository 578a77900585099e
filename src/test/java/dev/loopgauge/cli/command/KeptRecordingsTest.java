package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.job.kept.KeptContents;
import dev.loopgauge.job.kept.PackedRecording;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.MemoryJournal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptRecordingsTest {
  @TempDir Path folder;

  private final MemoryJournal journal = new MemoryJournal();

  private Path keep(long n) throws Exception {
    Path wav = Files.write(folder.resolve("wav"), new byte[] {(byte) n, 1, 2});
    Entry plain = Entries.entry(n);
    KeptCapture capture = PackedRecording.ofFile(wav).keep(folder);
    add(plain, capture);
    return folder.resolve(capture.file());
  }

  private void add(Entry plain, KeptCapture capture) throws Exception {
    journal.append(
        List.of(
            new Entry(
                plain.heading(),
                plain.note(),
                plain.setup(),
                plain.document(),
                plain.chain(),
                plain.card(),
                Optional.of(capture),
                plain.toolVersion())));
  }

  @Test
  void findsTheOneThatWasChanged() throws Exception {
    keep(1);
    Path changed = keep(2);
    assertEquals(List.of(), KeptContents.of(journal, folder).wrong());

    Files.write(changed, new byte[] {1});
    KeptContents contents = KeptContents.of(journal, folder);
    assertEquals(
        List.of("the recording " + changed.getFileName() + " is not what was stored"),
        contents.wrong());
    assertEquals(0, contents.missing());
  }

  @Test
  void countsThoseThatAreElsewhere() throws Exception {
    Files.delete(keep(1));
    keep(2);
    assertEquals(1, KeptContents.of(journal, folder).missing());
  }

  @Test
  void followsNoNameThatLeavesTheFolder() throws Exception {
    add(Entries.entry(1), new KeptCapture("/dev/zero", "00"));
    add(Entries.entry(2), new KeptCapture("../\u0000", "00"));
    KeptContents contents = KeptContents.of(journal, folder);
    assertEquals(2, contents.missing());
    assertEquals(List.of(), contents.wrong());
  }
}
