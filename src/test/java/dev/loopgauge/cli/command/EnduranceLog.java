package dev.loopgauge.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/** A line for each slice of what was endured at one state of the sources, kept from run to run. */
record EnduranceLog(String commit, Path folder) {
  private static final String HEAD =
      """
      Memory in MiB and all counts: first, last, most.

      | slice | right | refused | failed | memory | threads | handles | ports |
      |---|---|---|---|---|---|---|---|
      """;

  static EnduranceLog in(Path folder) throws IOException, InterruptedException {
    Files.createDirectories(folder);
    return new EnduranceLog(SoundCommit.last(), folder);
  }

  private Path file() {
    return folder.resolve(commit.substring(0, 12) + ".tsv");
  }

  /** Notes a slice, and writes the table of all. */
  void add(String slice, String counts, Footprints footprints) throws IOException {
    Files.writeString(
        file(),
        slice + "\t" + counts.replace(' ', '\t') + "\t" + footprints.cells() + "\n",
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
    StringBuilder table = new StringBuilder("Commit " + commit + "\n\n").append(HEAD);
    for (String line : List.copyOf(Files.readAllLines(file()))) {
      table.append("| ").append(line.replace("\t", " | ")).append(" |\n");
    }
    Files.writeString(folder.resolve("table.md"), table);
  }
}
