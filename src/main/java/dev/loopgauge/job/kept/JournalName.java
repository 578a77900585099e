package dev.loopgauge.job.kept;

import dev.loopgauge.setup.DataFolder;
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

  /** Whether nothing names another than the file in the data folder. */
  static boolean isDefault(Optional<String> said, Map<String, String> environment) {
    return named(said, environment).isEmpty();
  }

  private static Optional<String> named(Optional<String> said, Map<String, String> environment) {
    return said.filter(place -> !place.isBlank())
        .or(() -> Optional.ofNullable(environment.get(VARIABLE)).filter(place -> !place.isBlank()));
  }
}
