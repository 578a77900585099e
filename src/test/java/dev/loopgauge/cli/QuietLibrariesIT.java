package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.store.Journals;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong within a library is told by this program, in its own words. */
class QuietLibrariesIT {
  @TempDir private Path folder;

  /** SQLite's library unpacks itself into Java's folder for temporary files, else into ours. */
  @Test
  void aDatabaseThatCanNotUnpackItselfUsesTheDataFolder() throws Exception {
    Path journal = folder.resolve("journal.db");
    Journals.open(journal.toString(), Map.of()).close();
    Run run = run(folder.resolve("data"), journal);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("", run.err());
    assertTrue(Files.isDirectory(folder.resolve("data/native")));
  }

  @Test
  void whereNeitherFolderServesItIsToldInTwoLines() throws Exception {
    Path journal = folder.resolve("journal.db");
    Journals.open(journal.toString(), Map.of()).close();
    Run run = run(Files.createFile(folder.resolve("file")), journal);
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

  private Run run(Path data, Path journal) throws IOException, InterruptedException {
    Path err = folder.resolve("err");
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.io.tmpdir=" + folder.resolve("missing"),
            "-jar",
            System.getProperty("loopgauge.jar"),
            "journal",
            "list",
            "--journal",
            journal.toString());
    ProcessBuilder builder = new ProcessBuilder(command).redirectError(err.toFile());
    builder.environment().put("LOOPGAUGE_DATA", data.toString());
    return Jar.end(builder.start(), err);
  }
}
