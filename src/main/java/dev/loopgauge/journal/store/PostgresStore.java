package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * A PostgreSQL database. User and password come from the environment, or from the password file
 * that the driver reads by itself ({@code PGPASSFILE}, or {@code .pgpass} at home); never from the
 * address, which ends up in logs.
 */
final class PostgresStore implements Store {
  /** To reach the computer; one that drops packets says nothing. */
  private static final int CONNECT_SECONDS = 10;

  /**
   * To be let in, as long as SQLite's file is waited for: eight programs at once on two cores with
   * 30 more that were busy took more than 10 s.
   */
  private static final int LOGIN_SECONDS = TakingTurns.PATIENCE_MS / 1000;

  private final String address;
  private final DataSource source;

  /**
   * A database.
   *
   * @param environment where user and password stand
   * @throws JournalException when the driver can't read the address
   */
  PostgresStore(DatabaseAddress address, Map<String, String> environment) throws JournalException {
    this.address = address.place();
    PGSimpleDataSource opened = new PGSimpleDataSource();
    try {
      opened.setUrl(address.url());
    } catch (IllegalArgumentException e) {
      throw new JournalException(
          "the address " + address.place() + " can't be read", "mend it, and its parameters", e);
    }
    Optional.ofNullable(environment.get("PGUSER")).ifPresent(opened::setUser);
    Optional.ofNullable(environment.get("PGPASSWORD")).ifPresent(opened::setPassword);
    opened.setConnectTimeout(CONNECT_SECONDS);
    opened.setLoginTimeout(LOGIN_SECONDS);
    opened.setApplicationName("loopgauge");
    this.source = opened;
  }

  @Override
  public DataSource source() {
    return source;
  }

  @Override
  public void begin(Connection connection, boolean writes) throws SQLException {
    connection.setAutoCommit(false);
  }

  @Override
  public void commit(Connection connection) throws SQLException {
    connection.commit();
    connection.setAutoCommit(true);
  }

  @Override
  public void rollback(Connection connection) throws SQLException {
    connection.rollback();
    connection.setAutoCommit(true);
  }

  /** Connection exceptions, and the server's going down (PostgreSQL documentation, appendix A). */
  @Override
  public boolean isLost(SQLException error) {
    String state = Optional.ofNullable(error.getSQLState()).orElse("");
    return state.startsWith("08") || state.startsWith("57P");
  }

  @Override
  public String migrations() {
    return "dev/loopgauge/journal/store/postgresql";
  }

  /** By the classes of SQLSTATE (PostgreSQL documentation, appendix A). */
  @Override
  public JournalException failure(SQLException error) {
    String state = Optional.ofNullable(error.getSQLState()).orElse("");
    if (state.startsWith("28")) {
      return failure(
          error,
          "refuses this user or password",
          "set PGUSER and PGPASSWORD, or name a password file by PGPASSFILE");
    }
    if (isLost(error)) {
      return failure(error, "can't be reached", "does the server run, and is the address right?");
    }
    if (state.startsWith("3D")) {
      return failure(error, "is not there", "create the database first, or mend the address");
    }
    if (state.startsWith("53")) {
      return failure(error, "has no room or is too busy", "make room on the server's disk");
    }
    if (state.equals("42501")) {
      return failure(error, "may not be used by this user", "ask for the right to write it");
    }
    return failure(error, "failed: " + error.getMessage(), "try again");
  }

  @Override
  public String place() {
    return address;
  }

  @Override
  public List<String> damage(Connection connection) {
    return List.of();
  }
}
