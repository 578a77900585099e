package dev.loopgauge.journal.store;

import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;

/** What the databases' libraries would print; what they throw is enough. */
final class LibraryLogs {
  /** Held here, since Java forgets loggers that nobody holds, with their levels. */
  private static final List<Logger> LOGS =
      List.of(
          Logger.getLogger("org.flywaydb"),
          Logger.getLogger("org.sqlite"),
          Logger.getLogger("org.postgresql"));

  private LibraryLogs() {}

  /** Prints none of it from here on. */
  static void silence() {
    LOGS.forEach(log -> log.setLevel(Level.OFF));
  }
}
