package dev.loopgauge.cli.demo;

import dev.loopgauge.job.UsageException;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Finds a place for the files of a demo where nothing can be overwritten. */
public final class DemoFolder {
  private DemoFolder() {}

  /**
   * Makes a folder ready that somebody asked for.
   *
   * @throws IOException when it can't be made
   * @throws UsageException when there is something in it
   */
  public static Path empty(Path folder) throws IOException {
    Files.createDirectories(folder);
    try (Stream<Path> content = Files.list(folder)) {
      if (content.findAny().isPresent()) {
        throw new UsageException(
            "expected a new or empty folder, found files in " + folder, "name another --folder");
      }
    }
    return folder;
  }

  /**
   * Makes the next numbered folder.
   *
   * @param parent where it shall be; made when missing
   * @throws IOException when it can't be made
   */
  public static Path next(Path parent) throws IOException {
    Files.createDirectories(parent);
    for (int number = 1; ; number++) {
      try {
        return Files.createDirectory(parent.resolve(Integer.toString(number)));
      } catch (FileAlreadyExistsException taken) {
        // That number was another demo's: on to the next.
      }
    }
  }
}
