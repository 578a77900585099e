package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Recorded;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.store.Journals;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The command itself, killed at random moments between its start and its end: where it had ended
 * well, its entry is in the journal, and each entry there is whole, with its recording beside it.
 */
class KilledCommandsIT {
  private static final int KILLS = Integer.getInteger("loopgauge.kills", 24) / 4;
  private static final long SEED = 6;

  @TempDir Path folder;

  @Test
  void whatEndedWellIsThereAndAllOfItIsWhole() throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    Path recording = folder.resolve("recording.wav");
    Recorded.write(recording, Recorded.sweep(0, 1, 1), Recorded.sweep(100, 0.5, 2));
    Set<String> reported = new HashSet<>();
    long nanos = 0;
    for (int run = 0; run <= KILLS; run++) {
      Process process = start("show " + run, recording);
      if (run == 0) {
        long begun = System.nanoTime();
        process.waitFor();
        nanos = System.nanoTime() - begun;
      } else {
        process.waitFor(random.nextLong(nanos + nanos / 4), TimeUnit.NANOSECONDS);
        process.destroyForcibly().waitFor();
      }
      if (process.exitValue() == ExitCode.GOOD) {
        reported.add("show " + run);
      }
    }
    Set<String> stored = new HashSet<>();
    for (Entry entry : entries()) {
      stored.add(entry.heading().show());
      KeptCapture capture = entry.capture().orElseThrow();
      assertEquals(capture.digest(), digest(capture), "seed " + SEED);
    }
    assertTrue(reported.contains("show 0"), "the one that nobody killed");
    assertTrue(stored.containsAll(reported), () -> reported + " reported, stored " + stored);
  }

  private Process start(String show, Path recording) throws IOException {
    Map<String, String> environment = Map.of("LOOPGAUGE_DATA", folder.toString());
    return Jar.start(
        environment,
        folder.resolve("err"),
        "analyze",
        "--reference=" + recording,
        "--return-channel=2",
        "--json",
        "--journal",
        "--show=" + show,
        "--when=during",
        "--keep-capture");
  }

  private Path journal() {
    return folder.resolve("journal.db");
  }

  private List<Entry> entries() throws Exception {
    List<Entry> entries = new ArrayList<>();
    try (Journal journal = Journals.openExisting(journal().toString(), Map.of())) {
      assertEquals(List.of(), journal.check());
      journal.each(Selection.ALL, kept -> entries.add(kept.entry()));
    }
    return entries;
  }

  private String digest(KeptCapture capture) throws Exception {
    Path file = Path.of(journal() + "-captures").resolve(capture.file());
    byte[] bytes = Files.readAllBytes(file);
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
  }
}
