package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;

/** Opens journals by the place where they are kept. */
public final class Journals {
  private Journals() {}

  /**
   * Opens a journal; a file that isn't there is made.
   *
   * @param place a file, or {@code jdbc:postgresql://HOST[:PORT]/DATABASE}
   * @param environment where the user and password of a database stand: {@code PGUSER}, {@code
   *     PGPASSWORD}
   * @throws JournalException when it can't be opened, is of a newer version, or is no journal
   */
  public static Journal open(String place, Map<String, String> environment)
      throws JournalException {
    return open(JournalAddress.of(place), environment);
  }

  /** The same of an address that was read. */
  public static Journal open(JournalAddress address, Map<String, String> environment)
      throws JournalException {
    if (address instanceof JournalAddress.InFile inFile) {
      LibraryLogs.silence();
      NativeLibrary.load(environment);
      SqliteStore.begin(inFile.file());
      return open(new SqliteStore(inFile.file(), true));
    }
    return open(postgres(address, environment));
  }

  /**
   * Opens a journal that is there already.
   *
   * @param place as for {@link #open}
   * @param environment as for {@link #open}
   * @throws JournalException as for {@link #open}, and when there is no such file
   */
  public static Journal openExisting(String place, Map<String, String> environment)
      throws JournalException {
    JournalAddress address = JournalAddress.of(place);
    if (!(address instanceof JournalAddress.InFile inFile)) {
      return open(postgres(address, environment));
    }
    Path file = inFile.file();
    if (!Files.exists(file)) {
      throw new JournalException(
          "there is no journal " + file,
          "`loopgauge measure ... --journal --show NAME --when before` begins one");
    }
    checkBegun(file);
    LibraryLogs.silence();
    NativeLibrary.load(environment);
    return open(new SqliteStore(file, false));
  }

  /** SQLite takes a file of 0 bytes for an empty database. */
  private static void checkBegun(Path file) throws JournalException {
    try {
      if (Files.size(file) == 0) {
        throw new JournalException(
            "the journal " + file + " is empty, 0 bytes: it was wiped out, or is no journal",
            "take the copy you kept, or name another file");
      }
    } catch (IOException e) {
      throw new JournalException(
          "the journal " + file + " can't be read", "may you read it? is its disk there?", e);
    }
  }

  private static Store postgres(JournalAddress address, Map<String, String> environment)
      throws JournalException {
    return new PostgresStore(((JournalAddress.InDatabase) address).database(), environment);
  }

  private static Journal open(Store store) throws JournalException {
    LibraryLogs.silence();
    try {
      Connection connection = store.source().getConnection();
      try {
        Schema.bringUpToDate(store, connection);
        return new SqlJournal(store, connection);
      } catch (JournalException | RuntimeException e) {
        connection.close();
        throw e;
      }
    } catch (SQLException e) {
      throw store.failure(e);
    }
  }
}
