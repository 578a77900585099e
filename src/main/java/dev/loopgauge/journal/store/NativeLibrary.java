package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import dev.loopgauge.setup.DataFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.sqlite.SQLiteJDBCLoader;

/**
 * SQLite's own library, which unpacks itself into Java's folder for temporary files; where that is
 * full, missing or forbids execution, into the data folder.
 */
final class NativeLibrary {
  private static final String FOLDER = "org.sqlite.tmpdir";

  private NativeLibrary() {}

  /**
   * Loads it, once.
   *
   * @throws JournalException when neither folder serves
   */
  static void load(Map<String, String> environment) throws JournalException {
    if (isLoaded()) {
      return;
    }
    Path folder = DataFolder.of(environment).path().resolve("native");
    if (!isLoadedFrom(folder)) {
      throw new JournalException(
          "the database's library can be unpacked neither in the temporary folder %s nor in %s"
              .formatted(System.getProperty("java.io.tmpdir"), folder),
          "`java -Djava.io.tmpdir=FOLDER -jar ...` names a folder to write to and run from");
    }
  }

  private static boolean isLoadedFrom(Path folder) {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      return false;
    }
    System.setProperty(FOLDER, folder.toString());
    return isLoaded();
  }

  /** The library throws plain exceptions where it finds no folder, and logs, which is off. */
  private static boolean isLoaded() {
    try {
      return SQLiteJDBCLoader.initialize();
    } catch (Exception e) {
      return false;
    }
  }
}
