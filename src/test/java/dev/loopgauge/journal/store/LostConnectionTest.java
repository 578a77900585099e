package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** The connection is lost while a commit is under way. */
class LostConnectionTest {
  @TempDir Path folder;

  private Path file() {
    return folder.resolve("journal.db");
  }

  /** Commits or rolls back, then is gone; can be reached again or not. */
  private record Losing(Store store, boolean committed, boolean reachable) implements Store {
    @Override
    public DataSource source() {
      if (reachable) {
        return store.source();
      }
      SQLiteDataSource nowhere = new SQLiteDataSource();
      nowhere.setUrl("jdbc:sqlite:/dev/null/none.db");
      return nowhere;
    }

    @Override
    public void begin(Connection connection, boolean writes) throws SQLException {
      store.begin(connection, writes);
    }

    @Override
    public void commit(Connection connection) throws SQLException {
      if (committed) {
        store.commit(connection);
      } else {
        store.rollback(connection);
      }
      throw new SQLException("gone", "08006");
    }

    @Override
    public void rollback(Connection connection) throws SQLException {
      store.rollback(connection);
    }

    @Override
    public boolean isLost(SQLException error) {
      return "08006".equals(error.getSQLState());
    }

    @Override
    public String migrations() {
      return store.migrations();
    }

    @Override
    public String place() {
      return "here";
    }

    @Override
    public JournalException failure(SQLException error) {
      return store.failure(error);
    }

    @Override
    public List<String> damage(Connection connection) throws SQLException {
      return store.damage(connection);
    }
  }

  private int append(boolean committed, boolean reachable) throws Exception {
    Journals.open(file().toString(), Map.of()).close();
    Store store = new SqliteStore(file(), false);
    try (Connection connection = store.source().getConnection()) {
      Journal journal = new SqlJournal(new Losing(store, committed, reachable), connection);
      return journal.append(List.of(Entries.entry(1), Entries.entry(2)));
    }
  }

  private int stored() throws Exception {
    try (Journal journal = Journals.openExisting(file().toString(), Map.of())) {
      return journal.headings(Selection.ALL).size();
    }
  }

  @Test
  void whatIsThereOnANewConnectionWasKept() throws Exception {
    assertEquals(2, append(true, true));
    assertEquals(2, stored());
  }

  @Test
  void whatIsNotThereWasNotKept() throws Exception {
    JournalException lost = assertThrows(JournalException.class, () -> append(false, true));
    assertTrue(lost.getMessage().contains("before anything was kept"), lost.getMessage());
    assertEquals(0, stored());
  }

  @Test
  void whereNobodyCanSayItMayHaveBeenKept() {
    JournalException lost = assertThrows(JournalException.class, () -> append(true, false));
    assertTrue(lost.getMessage().contains("may have been kept, as "), lost.getMessage());
  }
}
