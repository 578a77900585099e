package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Properties;
import javax.sql.DataSource;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** A SQLite file that may not grow, which SQLite reports as it does a full disk. */
final class FullDisk implements Store {
  private final SqliteStore store;
  private final DataSource source;

  FullDisk(Path file) {
    store = new SqliteStore(file, false);
    Properties pragmas = new Properties();
    pragmas.setProperty("max_page_count", "1");
    SQLiteDataSource opened = new SQLiteDataSource(new SQLiteConfig(pragmas));
    opened.setUrl("jdbc:sqlite:" + file);
    source = opened;
  }

  @Override
  public DataSource source() {
    return source;
  }

  @Override
  public void begin(Connection connection, boolean writes) throws SQLException {
    store.begin(connection, writes);
  }

  @Override
  public void commit(Connection connection) throws SQLException {
    store.commit(connection);
  }

  @Override
  public void rollback(Connection connection) throws SQLException {
    store.rollback(connection);
  }

  @Override
  public String migrations() {
    return store.migrations();
  }

  @Override
  public String place() {
    return store.place();
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
