package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.flywaydb.core.Flyway;

/**
 * Makes the tables, and brings those of older versions up to date. The library that does it takes
 * longer to wake than most commands to run, so it is only asked where there is something to do.
 */
final class Schema {
  /** The version of the newest SQL file. */
  static final int VERSION = 3;

  private static final String HISTORY = "journal_version";

  private Schema() {}

  /**
   * Makes sure that a connection finds the tables of this version.
   *
   * @throws JournalException when the tables are of a newer version, or are no journal's
   */
  static void bringUpToDate(Store store, Connection connection) throws JournalException {
    if (version(connection) == VERSION) {
      return;
    }
    try {
      Flyway.configure(Schema.class.getClassLoader())
          .dataSource(store.source())
          .table(HISTORY)
          .locations("classpath:" + store.migrations())
          .load()
          .migrate();
    } catch (RuntimeException e) {
      // Two programs may both have begun: the other one's tables are as good. The library has no
      // exception of its own for a list of versions that is damaged.
      if (version(connection) != VERSION) {
        throw failure(store, e);
      }
    }
  }

  /** The version of the tables there; 0 where there are none. */
  private static int version(Connection connection) throws JournalException {
    Optional<Integer> found = read(connection);
    if (found.isPresent() && found.get() > VERSION) {
      throw new JournalException(
          "the journal is of version %d, and this program knows %d".formatted(found.get(), VERSION),
          "use the newer program that made it; nothing in it was touched");
    }
    return found.orElse(0);
  }

  private static Optional<Integer> read(Connection connection) {
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT version FROM "
                    + HISTORY
                    + " WHERE success AND version IS NOT NULL"
                    + " ORDER BY installed_rank DESC LIMIT 1")) {
      return rows.next() ? Optional.of(Integer.valueOf(rows.getString(1))) : Optional.empty();
    } catch (SQLException | NumberFormatException e) {
      // What is wrong besides a missing table shows itself once the tables are to be made.
      return Optional.empty();
    }
  }

  private static JournalException failure(Store store, RuntimeException e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException error) {
        return store.failure(error);
      }
    }
    return new JournalException(
        "the tables of the journal can't be made: something else is kept there, or its list of"
            + " versions is damaged",
        "name another file or database for the journal; nothing in this one was touched",
        e);
  }
}
