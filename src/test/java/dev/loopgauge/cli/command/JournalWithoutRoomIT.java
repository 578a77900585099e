package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Recorded;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.outside.Mount;
import dev.loopgauge.outside.NeedsTool;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What can't be kept, on a real full disk or in a folder that may only be read, is still printed.
 */
@NeedsTool("unshare")
@Timeout(120)
class JournalWithoutRoomIT {
  @TempDir Path folder;
  @TempDir Path copies;
  @TempDir Path elsewhere;

  private Path recording;

  @BeforeEach
  void record() throws Exception {
    recording = elsewhere.resolve("recording.wav");
    Recorded.write(recording, Recorded.sweep(0, 1, 1), Recorded.sweep(100, 0.5, 2));
  }

  @BeforeEach
  void mountsAreAllowed() throws Exception {
    assumeTrue(Mount.readOnly(folder).isAllowed(), "nothing can be mounted here");
  }

  @Test
  void onFullDisk() throws Exception {
    assertPrintedNotKept(Mount.smallDisk(folder, 48, copies), "can't grow: the disk is full");
  }

  @Test
  void inReadOnlyFolder() throws Exception {
    assertPrintedNotKept(Mount.readOnly(folder), "can't be opened");
  }

  /** The journal has room, the recording has not: neither is left, not even a part. */
  @Test
  void recordingWithoutRoomLeavesNoPart() throws Exception {
    Run run = run(Mount.smallDisk(folder, 96, copies), "--keep-capture");
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.out() + run.err());
    assertEquals("measured", run.json().get("outcome"));
    try (Stream<Path> left = Files.walk(copies)) {
      assertFalse(left.anyMatch(file -> file.toString().contains(".wav")), run.err());
    }
  }

  private void assertPrintedNotKept(Mount mount, String why) throws Exception {
    Run run = run(mount);
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.out() + run.err());
    assertEquals("measured", run.json().get("outcome"));
    assertTrue(run.err().contains("NOT KEPT: the journal "), run.err());
    assertTrue(run.err().contains(why), run.err());
    assertTrue(run.err().contains("  try  "), run.err());
  }

  private Run run(Mount mount, String... more) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                System.getProperty("loopgauge.jar"),
                "analyze",
                "--reference=" + recording,
                "--return-channel=2",
                "--json",
                "--journal=" + folder.resolve("journal.db"),
                "--show=Harbour, Friday",
                "--when=before"));
    command.addAll(List.of(more));
    Path err = elsewhere.resolve("err");
    Process process = new ProcessBuilder(mount.around(command)).redirectError(err.toFile()).start();
    return Jar.end(process, err);
  }
}
