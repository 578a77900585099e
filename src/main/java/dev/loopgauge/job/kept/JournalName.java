package dev.loopgauge.job.kept;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.setup.DataFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Map;
import java.util.Optional;

/** Which journal is meant: a file, or the address of a database. */
public final class JournalName {
  /** The environment variable that names another journal. */
  public static final String VARIABLE = "LOOPGAUGE_JOURNAL";

  private JournalName() {}

  /** What was said, else what the environment names, else the file in the data folder. */
  public static String of(Optional<String> said, Map<String, String> environment) {
    return named(said, environment)
        .orElseGet(() -> DataFolder.of(environment).path().resolve("journal.db").toString());
  }

  /**
   * Makes the data folder for the journal in it: a folder that the user names must be there.
   *
   * @throws JournalException when it can't be made
   */
  public static void makeFolder(Optional<String> said, Map<String, String> environment)
      throws JournalException {
    if (named(said, environment).isPresent()) {
      return;
    }
    try {
      Files.createDirectories(DataFolder.of(environment).path());
    } catch (IOException e) {
      throw new JournalException(
          "the journal's folder can't be made: " + FileTrouble.reason(e),
          "is the disk full, may you write there?",
          e);
    }
  }

  private static Optional<String> named(Optional<String> said, Map<String, String> environment) {
    return said.filter(place -> !place.isBlank())
        .or(() -> Optional.ofNullable(environment.get(VARIABLE)).filter(place -> !place.isBlank()));
  }
}
