package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import javax.sql.DataSource;

/** What differs between the databases that a journal can be kept in. */
interface Store {
  /** Opens connections. */
  DataSource source();

  /**
   * Begins a transaction.
   *
   * @param writes whether it will write, so that a database that allows one writer waits now
   */
  void begin(Connection connection, boolean writes) throws SQLException;

  /** Ends a transaction; all of it is on the disk then. */
  void commit(Connection connection) throws SQLException;

  /** Ends a transaction as if it had not been. */
  void rollback(Connection connection) throws SQLException;

  /** Whether an error means that the connection was lost, so that a commit may be done or not. */
  default boolean isLost(SQLException error) {
    return false;
  }

  /** Where the SQL files of this database are, on the class path. */
  String migrations();

  /** What the journal is called by: a file, or an address. */
  String place();

  /** The failure of this journal with its cause. */
  default JournalException failure(SQLException error, String what, String hint) {
    return new JournalException("the journal " + place() + " " + what, hint, error);
  }

  /** What an error means to a person. */
  JournalException failure(SQLException error);

  /**
   * What the database itself finds wrong with its files, one sentence each.
   *
   * @throws SQLException when it can't be asked
   */
  List<String> damage(Connection connection) throws SQLException;
}
