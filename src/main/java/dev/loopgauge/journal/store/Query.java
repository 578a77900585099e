package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.StoredText;
import dev.loopgauge.journal.When;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A question for entries. */
final class Query {
  /** The order of keeping within an origin, of time between origins. */
  static final String ORDER = " ORDER BY order_ms, number, position";

  private final StringBuilder sql;
  private final List<String> values = new ArrayList<>();
  private final boolean newestFirst;

  /**
   * Asks for a selection, in the order of keeping; for the latest ones, in the reverse order.
   *
   * @param select what to read of them, and from where
   */
  Query(String select, Selection selection) {
    sql = new StringBuilder(select).append(" WHERE 1 = 1");
    where("show_name", selection.show().map(StoredText::stored));
    where("path", selection.path().map(StoredText::stored));
    where("day_part", selection.when().map(When::label));
    newestFirst = selection.latest().isPresent();
    sql.append(
        newestFirst
            ? " ORDER BY order_ms DESC, number DESC, position DESC LIMIT "
                + selection.latest().getAsInt()
            : ORDER);
  }

  private void where(String column, Optional<String> value) {
    if (value.isPresent()) {
      sql.append(" AND ").append(column).append(" = ?");
      values.add(value.get());
    }
  }

  /** Whether the latest come first. */
  boolean newestFirst() {
    return newestFirst;
  }

  PreparedStatement prepare(Connection connection, int fetched) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql.toString());
    statement.setFetchSize(fetched);
    for (int i = 0; i < values.size(); i++) {
      statement.setString(i + 1, values.get(i));
    }
    return statement;
  }
}
