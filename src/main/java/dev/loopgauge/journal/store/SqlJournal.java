package dev.loopgauge.journal.store;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.StoredText;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/** A journal in a database, by statements that every database here understands. */
final class SqlJournal implements Journal {
  /** How many entries are fetched at a time. */
  private static final int FETCHED = 100;

  private static final String WHOLE =
      "SELECT entry.*, detail.*, chain.content FROM entry LEFT JOIN detail ON detail.entry_id = entry.id"
          + " LEFT JOIN chain ON chain.digest = detail.chain_digest";

  private final Store store;
  private final Connection connection;

  /** A journal on an open connection, which it closes. */
  SqlJournal(Store store, Connection connection) {
    this.store = store;
    this.connection = connection;
  }

  /** Something to be done with the connection. */
  private interface Work<T> {
    T done() throws SQLException, JournalException;
  }

  private <T> T read(Work<T> work) throws JournalException {
    return whole(false, work);
  }

  /** Does work as one transaction: all of it or nothing. */
  private <T> T whole(boolean writes, Work<T> work) throws JournalException {
    try {
      store.begin(connection, writes);
      try {
        T result = work.done();
        store.commit(connection);
        return result;
      } catch (SQLException | JournalException | RuntimeException e) {
        store.rollback(connection);
        throw e;
      }
    } catch (SQLException e) {
      throw store.failure(e);
    }
  }

  @Override
  public int append(List<Entry> entries) throws JournalException {
    return whole(
        true,
        () -> {
          int added = 0;
          for (Entry entry : entries) {
            added += add(entry) ? 1 : 0;
          }
          for (Entry entry : entries) {
            checkCorrected(entry.heading());
          }
          return added;
        });
  }

  private boolean add(Entry entry) throws SQLException, JournalException {
    Optional<Entry> there = find(entry.heading().id());
    if (there.isPresent()) {
      if (there.get().equals(entry)) {
        return false;
      }
      throw new JournalException(
          "entry " + entry.heading().id() + " is in the journal already, with other contents",
          "entries are never changed: is this file from another journal, or edited?");
    }
    try (PreparedStatement insert = insert("entry", EntryRow.HEADING)) {
      EntryRow.writeHeading(insert, entry.heading());
      insert.executeUpdate();
    }
    if (entry.chain().isPresent()) {
      add(entry.chain().get());
    }
    try (PreparedStatement insert = insert("detail", EntryRow.DETAIL)) {
      EntryRow.writeDetail(insert, entry);
      insert.executeUpdate();
    }
    return true;
  }

  private void add(ChainText chain) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO chain (digest, content) VALUES (?, ?) ON CONFLICT DO NOTHING")) {
      insert.setString(1, chain.digest());
      insert.setString(2, StoredText.stored(chain.text()));
      insert.executeUpdate();
    }
  }

  private PreparedStatement insert(String table, String columns) throws SQLException {
    int count = columns.split(",", -1).length;
    return connection.prepareStatement(
        "INSERT INTO %s (%s) VALUES (%s)"
            .formatted(table, columns, String.join(", ", Collections.nCopies(count, "?"))));
  }

  private void checkCorrected(Heading heading) throws SQLException, JournalException {
    if (heading.corrects().isPresent() && find(heading.corrects().get()).isEmpty()) {
      throw new JournalException(
          "there is no entry " + heading.corrects().get() + " to correct",
          "`loopgauge journal list` shows those that there are");
    }
  }

  private Optional<Entry> find(UUID id) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(WHOLE + " WHERE id = ?")) {
      select.setString(1, id.toString());
      try (ResultSet rows = select.executeQuery()) {
        return rows.next() ? Optional.of(EntryRow.readEntry(rows)) : Optional.empty();
      }
    }
  }

  @Override
  public List<Heading> headings(Selection selection) throws JournalException {
    return read(
        () -> {
          List<Heading> found = new ArrayList<>();
          Query query = new Query("SELECT " + EntryRow.HEADING + " FROM entry", selection);
          try (PreparedStatement select = query.prepare(connection, FETCHED);
              ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
              found.add(EntryRow.readHeading(rows));
            }
          }
          if (query.newestFirst()) {
            Collections.reverse(found);
          }
          return found;
        });
  }

  @Override
  public void each(Selection selection, Consumer<Entry> reader) throws JournalException {
    if (selection.latest().isPresent()) {
      for (Heading heading : headings(selection)) {
        entry(heading.id()).ifPresent(reader);
      }
      return;
    }
    read(
        () -> {
          Query query = new Query(WHOLE, selection);
          try (PreparedStatement select = query.prepare(connection, FETCHED);
              ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
              reader.accept(EntryRow.readEntry(rows));
            }
          }
          return null;
        });
  }

  @Override
  public Optional<Entry> entry(UUID id) throws JournalException {
    return read(() -> find(id));
  }

  @Override
  public Map<UUID, UUID> corrections() throws JournalException {
    return whole(
        false,
        () -> {
          Map<UUID, UUID> newer = new HashMap<>();
          try (PreparedStatement select =
                  connection.prepareStatement(
                      "SELECT corrects, id FROM entry WHERE corrects IS NOT NULL"
                          + " ORDER BY at_ms, position");
              ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
              newer.put(UUID.fromString(rows.getString(1)), UUID.fromString(rows.getString(2)));
            }
          }
          return newer;
        });
  }

  @Override
  public List<Heading> beginning(String id) throws JournalException {
    return whole(
        false,
        () -> {
          List<Heading> found = new ArrayList<>();
          try (PreparedStatement select =
              connection.prepareStatement(
                  "SELECT "
                      + EntryRow.HEADING
                      + " FROM entry WHERE substr(id, 1, ?) = ? ORDER BY at_ms, position")) {
            select.setInt(1, id.length());
            select.setString(2, id);
            try (ResultSet rows = select.executeQuery()) {
              while (rows.next()) {
                found.add(EntryRow.readHeading(rows));
              }
            }
          }
          return found;
        });
  }

  @Override
  public List<String> check() throws JournalException {
    return read(() -> new StoreCheck(store, connection).findings());
  }

  @Override
  public void close() throws JournalException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw store.failure(e);
    }
  }
}
