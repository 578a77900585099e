package dev.loopgauge.screen.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Takes the names of folders out of what is sent to browsers: files are told by their names. */
final class Discreet {
  private final List<String> folders = new ArrayList<>();

  /** Knows the folders of these files, the user's own and the one that the program runs in. */
  Discreet(List<Path> files) {
    for (Path file : files) {
      add(file.toAbsolutePath().getParent());
      add(file.getParent());
    }
    add(Path.of("").toAbsolutePath());
    add(Path.of(System.getProperty("user.home")));
  }

  private void add(Path folder) {
    if (folder != null && folder.getNameCount() > 0 && !folder.toString().isEmpty()) {
      folders.add(folder + "/");
    }
  }

  /** The text without them. */
  String told(String text) {
    String told = text;
    for (String folder : folders) {
      told = told.replace(folder, "");
    }
    return told;
  }
}
