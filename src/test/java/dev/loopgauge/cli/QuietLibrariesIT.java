package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong within a library is told by this program, in its own words. */
class QuietLibrariesIT {
  @TempDir private Path folder;

  /** SQLite's library unpacks itself into Java's folder for temporary files. */
  @Test
  void aDatabaseThatCanNotUnpackItselfIsToldInTwoLines() throws Exception {
    Path journal = Files.createFile(folder.resolve("journal.db"));
    Run run = run("-Djava.io.tmpdir=" + folder.resolve("missing"), journal);
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.err());
    assertEquals("", run.out());
    assertEquals(
        "the journal "
            + journal
            + " can't be opened: the database's library finds no folder to unpack itself into\n"
            + "  try  `java -Djava.io.tmpdir=FOLDER -jar ...` names a folder to write to and run"
            + " from\n",
        run.err());
  }

  private Run run(String option, Path journal) throws IOException, InterruptedException {
    Path err = folder.resolve("err");
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            option,
            "-jar",
            System.getProperty("loopgauge.jar"),
            "journal",
            "list",
            "--journal",
            journal.toString());
    return Jar.end(new ProcessBuilder(command).redirectError(err.toFile()).start(), err);
  }
}
