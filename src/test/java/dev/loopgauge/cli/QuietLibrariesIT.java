package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.outside.Mount;
import dev.loopgauge.outside.NeedsTool;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes wrong within a library is told by this program, in its own words. */
class QuietLibrariesIT {
  @TempDir private Path folder;

  /** SQLite's library unpacks itself into Java's folder for temporary files, else into ours. */
  @Test
  void aDatabaseThatCanNotUnpackItselfUsesTheDataFolder() throws Exception {
    Path journal = folder.resolve("journal.db");
    Journals.open(journal.toString(), Map.of()).close();
    Run run = run(folder.resolve("data"), command(journal));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("", run.err());
    assertTrue(Files.isDirectory(folder.resolve("data/native")));
  }

  /** A real folder of each kind; the library has more than the 64 kilobytes of the full one. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  @NeedsTool("unshare")
  void soItDoesWhereTheFolderIsFullOrForbidsExecution(boolean isFull) throws Exception {
    Path journal = folder.resolve("journal.db");
    Journals.open(journal.toString(), Map.of()).close();
    Path temporary = Files.createDirectory(folder.resolve("missing"));
    Mount mount =
        isFull
            ? Mount.smallDisk(temporary, 64, Files.createDirectory(folder.resolve("copies")))
            : Mount.withoutExecution(temporary);
    assumeTrue(mount.isAllowed(), "nothing can be mounted here");
    Path data = folder.resolve("data");
    Run run = run(data, mount.around(command(journal)));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("", run.err());
    assertTrue(Files.isDirectory(data.resolve("native")));
  }

  @Test
  void whereNeitherFolderServesItIsToldInTwoLines() throws Exception {
    Path journal = folder.resolve("journal.db");
    Journals.open(journal.toString(), Map.of()).close();
    Run run = run(Files.createFile(folder.resolve("file")), command(journal));
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.err());
    assertEquals("", run.out());
    assertEquals(
        "the database's library can be unpacked neither in the temporary folder "
            + folder.resolve("missing")
            + " nor in "
            + folder.resolve("file/native")
            + "\n  try  `java -Djava.io.tmpdir=FOLDER -jar ...` names a folder to write to and run"
            + " from\n",
        run.err());
  }

  private List<String> command(Path journal) {
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-Djava.io.tmpdir=" + folder.resolve("missing"),
        "-jar",
        System.getProperty("loopgauge.jar"),
        "journal",
        "list",
        "--journal",
        journal.toString());
  }

  private Run run(Path data, List<String> command) throws IOException, InterruptedException {
    Path err = folder.resolve("err");
    ProcessBuilder builder = new ProcessBuilder(command).redirectError(err.toFile());
    builder.environment().put("LOOPGAUGE_DATA", data.toString());
    return Jar.end(builder.start(), err);
  }
}
