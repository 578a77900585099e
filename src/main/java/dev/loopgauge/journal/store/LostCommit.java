package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;

/**
 * A commit whose connection was lost, so that nobody said whether it was done: the entries are
 * looked for on a new connection.
 */
record LostCommit(Store store, List<UUID> ids) {
  /**
   * Makes sure that they are there.
   *
   * @throws JournalException when they aren't, or when nobody can say
   */
  void check(SQLException lost) throws JournalException {
    if (!areThere(lost)) {
      throw store.failure(
          lost, "lost the connection before anything was kept", "does the server run? try again");
    }
  }

  /** All or none: they were one transaction. */
  private boolean areThere(SQLException lost) throws JournalException {
    try (Connection again = store.source().getConnection();
        PreparedStatement select = again.prepareStatement("SELECT 1 FROM entry WHERE id = ?")) {
      select.setString(1, ids.get(0).toString());
      try (ResultSet rows = select.executeQuery()) {
        return rows.next();
      }
    } catch (SQLException e) {
      throw store.failure(
          lost,
          "lost the connection: the result may have been kept, as " + ids.get(0),
          "once the server runs, `loopgauge journal show ID` tells; keep it again only if not");
    }
  }
}
