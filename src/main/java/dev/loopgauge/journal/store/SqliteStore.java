package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import javax.sql.DataSource;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

/**
 * One SQLite file.
 *
 * <p>Its changes go through a rollback journal that is gone once they are on the disk, so that
 * between two commands the file is all there is and can be copied. {@code synchronous=EXTRA} also
 * waits for the folder, so that a power cut can't bring back what was committed away (SQLite
 * documentation, "PRAGMA synchronous").
 */
final class SqliteStore implements Store {
  private static final int PATIENCE_S = TakingTurns.PATIENCE_MS / 1000;

  private final Path file;
  private final DataSource source;
  private boolean hasWritten;
  private Optional<Object> inUse = Optional.empty();

  /**
   * A file.
   *
   * @param create whether it is made where there is none
   */
  SqliteStore(Path file, boolean create) {
    this.file = file;
    Properties pragmas = new Properties();
    pragmas.setProperty("synchronous", "EXTRA");
    SQLiteConfig config = new SQLiteConfig(pragmas);
    config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
    // For transactions of the driver, which make the tables: one that reads first can't wait later.
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.setBusyTimeout(TakingTurns.PATIENCE_MS);
    config.enforceForeignKeys(true);
    if (!create) {
      config.resetOpenMode(SQLiteOpenMode.CREATE);
    }
    SQLiteDataSource opened = new PatientSource(config);
    // As an address, so that no character of the name means anything but itself.
    opened.setUrl("jdbc:sqlite:file:" + file.toUri().getRawPath());
    this.source = opened;
  }

  /** A new file, to be read by the user alone, where the disk knows such rights. */
  static void begin(Path file) {
    if (!file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      return;
    }
    try {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    } catch (IOException e) {
      // It is there already, or the database says better than this what is wrong.
    }
  }

  @Override
  public DataSource source() {
    return source;
  }

  /** By statements: the driver's own transactions keep the lock from one to the next. */
  @Override
  public void begin(Connection connection, boolean writes) throws SQLException {
    if (writes && hasWritten) {
      TakingTurns.letOthers();
    }
    hasWritten |= writes;
    checkSameFile();
    execute(connection, writes ? "BEGIN IMMEDIATE" : "BEGIN");
  }

  /** What is written to a file that was moved away is lost with it, and SQLite can't tell. */
  private void checkSameFile() throws SQLException {
    Optional<Object> now = fileKey();
    if (inUse.isPresent() && !inUse.equals(now)) {
      throw new SQLException("its file was moved or deleted while it was open");
    }
    inUse = now;
  }

  /**
   * What the disk tells files apart by; empty where there is none, or the disk has no such thing.
   */
  private Optional<Object> fileKey() {
    try {
      return Optional.ofNullable(Files.readAttributes(file, BasicFileAttributes.class).fileKey());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  @Override
  public void commit(Connection connection) throws SQLException {
    execute(connection, "COMMIT");
  }

  /** A full disk has rolled it back already. */
  @Override
  public void rollback(Connection connection) throws SQLException {
    try {
      execute(connection, "ROLLBACK");
    } catch (SQLException e) {
      if (!hasEnded(e)) {
        throw e;
      }
    }
  }

  /** SQLite has rolled back by itself, which it does where a disk is full or fails. */
  private static boolean hasEnded(SQLException error) {
    return error.getMessage().contains("no transaction is active");
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  @Override
  public String migrations() {
    return "dev/loopgauge/journal/store/sqlite";
  }

  @Override
  public JournalException failure(SQLException error) {
    if (hasEnded(error)) {
      return failure(error, "could not be written to the end", "is its disk full, or failing?");
    }
    SQLiteErrorCode code =
        error instanceof SQLiteException e ? e.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
    // The low byte is the primary code, the rest says more (SQLite documentation, "Result Codes").
    return switch (SQLiteErrorCode.getErrorCode(code.code & 0xff)) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          failure(
              error,
              "has been in use by another program for %d s".formatted(PATIENCE_S),
              "wait for it, and try again");
      case SQLITE_FULL -> failure(error, "can't grow: the disk is full", "make room on the disk");
      case SQLITE_IOERR ->
          failure(
              error,
              "can't be read or written: the disk fails",
              "is it plugged in? keep the journal on another disk, and run `loopgauge journal check`");
      case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
          failure(error, "may only be read", "may you write the file and its folder?");
      case SQLITE_CANTOPEN ->
          failure(
              error,
              "can't be opened",
              "does its folder exist, and may you write there? --journal FILE names another");
      case SQLITE_CORRUPT, SQLITE_NOTADB ->
          failure(
              error,
              "is damaged, or no journal at all",
              "take the copy you kept, or name another file; this one was left as it is");
      default -> failure(error, "failed: " + error.getMessage(), "try again; keep a copy of it");
    };
  }

  @Override
  public String place() {
    return file.toString();
  }

  @Override
  public List<String> damage(Connection connection) throws SQLException {
    List<String> found = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("PRAGMA integrity_check")) {
      while (rows.next()) {
        if (!rows.getString(1).equals("ok")) {
          found.add("the file is damaged: " + rows.getString(1));
        }
      }
    }
    return found;
  }
}
