package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Keeping;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * A journal as the origin of what is kept in it first.
 *
 * @param id its own name
 * @param kept how many entries it kept
 * @param link the link of the last one; empty before the first
 * @param orderMs the place in time of the last one, in ms since 1970
 * @param unchained how many entries there are that no origin is known of
 */
record OwnOrigin(String id, long kept, String link, long orderMs, long unchained) {
  /** Reads it. */
  static OwnOrigin read(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT id, kept, link, order_ms, unchained FROM own_origin")) {
      if (!row.next()) {
        throw new SQLException("the journal has lost its own name");
      }
      long orderMs = row.getLong("order_ms");
      return new OwnOrigin(
          row.getString("id"),
          row.getLong("kept"),
          row.getString("link"),
          row.wasNull() ? Long.MIN_VALUE : orderMs,
          row.getLong("unchained"));
    }
  }

  /** Reads it, and keeps other writers waiting until the transaction ends. */
  static OwnOrigin readAndLock(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate("UPDATE own_origin SET kept = kept");
    }
    return read(connection);
  }

  /** The keeping of the next entry. */
  Keeping next(Heading heading, String digest) {
    long atMs = heading.at().toInstant().toEpochMilli();
    String before = kept == 0 ? id : link;
    return new Keeping(id, kept + 1, Keeping.link(before, digest), Math.max(orderMs, atMs));
  }

  /** The same after an entry of its own was added. */
  OwnOrigin with(Keeping keeping) {
    return new OwnOrigin(id, keeping.number(), keeping.link(), keeping.orderMs(), unchained);
  }

  /** The same after an entry without an origin was added. */
  OwnOrigin withUnchained() {
    return new OwnOrigin(id, kept, link, orderMs, unchained + 1);
  }

  void write(Connection connection) throws SQLException {
    try (PreparedStatement update =
        connection.prepareStatement(
            "UPDATE own_origin SET kept = ?, link = ?, order_ms = ?, unchained = ?")) {
      update.setLong(1, kept);
      update.setString(2, link);
      update.setObject(3, kept == 0 ? null : orderMs);
      update.setLong(4, unchained);
      update.executeUpdate();
    }
  }
}
