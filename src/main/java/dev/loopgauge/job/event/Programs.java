package dev.loopgauge.job.event;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Looks for programs as the system does that starts them. */
final class Programs {
  /** With what Windows adds by itself. */
  private static final List<String> ENDINGS = List.of("", ".exe", ".cmd", ".bat");

  private Programs() {}

  /**
   * Whether a program can be run.
   *
   * @param name its name, with or without its folder
   * @param search the folders to look into for one without, as in {@code PATH}; null for none
   */
  static boolean isThere(String name, String search) {
    boolean hasFolder = name.contains("/") || name.contains(File.separator);
    Stream<String> folders =
        hasFolder || search == null ? Stream.of("") : Stream.of(search.split(File.pathSeparator));
    return folders
        .flatMap(folder -> ENDINGS.stream().map(ending -> Path.of(folder, name + ending)))
        .anyMatch(file -> Files.isRegularFile(file) && Files.isExecutable(file));
  }
}
