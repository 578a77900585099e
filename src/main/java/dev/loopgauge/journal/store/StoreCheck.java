package dev.loopgauge.journal.store;

import dev.loopgauge.journal.EntryDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Reads all of a store and says what is wrong with it. */
final class StoreCheck {
  private static final int FETCHED = 100;

  private final Store store;
  private final Connection connection;
  private final List<String> findings = new ArrayList<>();

  StoreCheck(Store store, Connection connection) {
    this.store = store;
    this.connection = connection;
  }

  /** One sentence for each thing that is wrong; empty when all is well. */
  List<String> findings() throws SQLException {
    findings.addAll(store.damage(connection));
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT entry.*, detail.*, chain.content, corrected.id AS corrected_id"
                + " FROM entry LEFT JOIN detail ON detail.entry_id = entry.id"
                + " LEFT JOIN chain ON chain.digest = detail.chain_digest"
                + " LEFT JOIN entry corrected ON corrected.id = entry.corrects"
                + " ORDER BY entry.position")) {
      select.setFetchSize(FETCHED);
      try (ResultSet rows = select.executeQuery()) {
        while (rows.next()) {
          check(rows);
        }
      }
    }
    return List.copyOf(findings);
  }

  private void check(ResultSet row) throws SQLException {
    String entry = "entry " + row.getString("id");
    if (row.getString("entry_id") == null) {
      findings.add(entry + " is half there: only its heading is stored");
      return;
    }
    if (row.getString("corrects") != null && row.getString("corrected_id") == null) {
      findings.add(entry + " corrects an entry that is not there");
    }
    try {
      if (!row.getString("digest").equals(EntryDigest.of(EntryRow.readEntry(row)))) {
        findings.add(entry + " is not what was stored: its digest doesn't match");
      }
    } catch (RuntimeException e) {
      findings.add(entry + " holds what no entry can hold");
    }
  }
}
