package dev.loopgauge.journal.store;

import dev.loopgauge.journal.DamagedEntry;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Reads all of a store and says what is wrong with it. */
final class StoreCheck {
  private static final int FETCHED = 100;

  private final Store store;
  private final Connection connection;
  private final List<String> findings = new ArrayList<>();
  private final EntryRows rows = new EntryRows();

  StoreCheck(Store store, Connection connection) {
    this.store = store;
    this.connection = connection;
  }

  /** One sentence for each thing that is wrong; empty when all is well. */
  List<String> findings() throws SQLException {
    findings.addAll(store.damage(connection));
    EntryChain chain = new EntryChain(OwnOrigin.read(connection));
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT entry.*, detail.*, chain.content"
                + " FROM entry LEFT JOIN detail ON detail.entry_id = entry.id"
                + " LEFT JOIN chain ON chain.digest = detail.chain_digest"
                + " ORDER BY entry.origin, entry.number, entry.position")) {
      select.setFetchSize(FETCHED);
      check(select, chain);
    }
    rows.damaged().stream().map(DamagedEntry::told).forEach(findings::add);
    findings.addAll(chain.findings());
    return List.copyOf(findings);
  }

  private void check(PreparedStatement select, EntryChain chain) throws SQLException {
    Set<String> corrected = new HashSet<>();
    Set<String> ids = new HashSet<>();
    try (ResultSet row = select.executeQuery()) {
      while (row.next()) {
        ids.add(row.getString("id"));
        if (row.getString("corrects") != null) {
          corrected.add(row.getString("corrects") + " " + row.getString("id"));
        }
        rows.entry(row);
        chain.add(row);
      }
    }
    corrected.stream()
        .filter(pair -> !ids.contains(pair.substring(0, pair.indexOf(' '))))
        .map(pair -> "entry " + pair.substring(pair.indexOf(' ') + 1))
        .sorted()
        .forEach(entry -> findings.add(entry + " corrects an entry that is not there"));
  }
}
