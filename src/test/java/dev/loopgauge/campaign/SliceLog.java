package dev.loopgauge.campaign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What the slices of one campaign came to at one commit, a line each, as they end. */
final class SliceLog {
  private static final String TAB = "\t";

  /** A line without it was cut short when the run was stopped. */
  private static final String END = ".";

  private final Path file;
  private final Map<String, List<String>> done = new HashMap<>();

  /**
   * A log.
   *
   * @param file where it is, or will be
   * @param anew whether to begin it again
   */
  SliceLog(Path file, boolean anew) {
    this.file = file;
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      if (anew) {
        Files.deleteIfExists(file);
      } else if (Files.exists(file)) {
        Files.readAllLines(file).forEach(this::remember);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void remember(String line) {
    List<String> parts = Arrays.asList(line.split(TAB, -1));
    int last = parts.size() - 1;
    if (last > 0 && parts.get(last).equals(END)) {
      done.put(parts.get(0), List.copyOf(parts.subList(1, last)));
    }
  }

  /** What a slice came to in this run or an earlier one; empty where it wasn't run yet. */
  synchronized List<String> of(String slice) {
    return done.getOrDefault(slice, List.of());
  }

  /** Keeps what a slice came to. */
  synchronized void keep(String slice, List<String> figures) {
    String line = slice + TAB + String.join(TAB, figures) + TAB + END;
    if (line.lines().count() != 1 || line.split(TAB, -1).length != figures.size() + 2) {
      throw new IllegalArgumentException("expected figures without tabs and line ends: " + line);
    }
    done.put(slice, List.copyOf(figures));
    try {
      // A line that was cut short by the end of an earlier run is ended first.
      String begin = endsInMidLine() ? "\n" : "";
      Files.writeString(
          file, begin + line + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean endsInMidLine() throws IOException {
    return Files.exists(file) && !Files.readString(file).endsWith("\n") && Files.size(file) > 0;
  }
}
