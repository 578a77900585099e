package dev.loopgauge.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What came of each trial at one state of the sources, a line each, so that a campaign can go on
 * where it was left. The state is the last commit that touched what plays and records.
 */
record StrikeLog(String commit, Path file) {
  /** The log of the sources as they are committed, in a folder. */
  static StrikeLog in(Path folder) throws IOException, InterruptedException {
    Files.createDirectories(folder);
    String commit = SoundCommit.last();
    return new StrikeLog(commit, folder.resolve(commit.substring(0, 12) + ".log"));
  }

  /** The seed of all trials at this state. */
  long seed() {
    return Long.parseUnsignedLong(commit.substring(0, 16), 16);
  }

  /** How many trials are done. */
  int done() throws IOException {
    return lines().size();
  }

  private List<String> lines() throws IOException {
    return Files.exists(file) ? Files.readAllLines(file) : List.of();
  }

  /**
   * Notes a trial.
   *
   * @param outcome one word
   */
  void add(int number, Strike strike, long afterMillis, String outcome) throws IOException {
    Files.writeString(
        file,
        "%d %s %d %s%n".formatted(number, strike, afterMillis, outcome),
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
  }

  /** How often each outcome came of each strike, as a table. */
  String table() throws IOException {
    Map<String, Map<String, Integer>> counts = new TreeMap<>();
    for (String line : lines()) {
      String[] words = line.split(" ", -1);
      counts.computeIfAbsent(words[1], strike -> new TreeMap<>()).merge(words[3], 1, Integer::sum);
    }
    StringBuilder table = new StringBuilder("Commit " + commit + ", " + done() + " trials\n\n");
    counts.forEach(
        (strike, outcomes) -> table.append(strike).append(" ").append(outcomes).append("\n"));
    return table.toString();
  }
}
