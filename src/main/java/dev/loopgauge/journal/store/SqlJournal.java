package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.DamagedEntry;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.Selection;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
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
  private final EntryRows sound = new EntryRows();

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
    try {
      T result = begun(false, work);
      store.commit(connection);
      return result;
    } catch (SQLException e) {
      throw store.failure(e);
    }
  }

  /** Does work that adds entries as one transaction: all of it or nothing. */
  private int write(List<UUID> ids, Work<Integer> work) throws JournalException {
    try {
      int added = begun(true, work);
      commit(ids);
      return added;
    } catch (SQLException e) {
      throw store.failure(e);
    }
  }

  private void commit(List<UUID> ids) throws SQLException, JournalException {
    try {
      store.commit(connection);
    } catch (SQLException e) {
      if (ids.isEmpty() || !store.isLost(e)) {
        store.rollback(connection);
        throw e;
      }
      new LostCommit(store, ids).check(e);
    }
  }

  /** Begins a transaction and does the work, or rolls it back. */
  private <T> T begun(boolean writes, Work<T> work) throws SQLException, JournalException {
    store.begin(connection, writes);
    try {
      return work.done();
    } catch (SQLException | JournalException | RuntimeException e) {
      store.rollback(connection);
      throw e;
    }
  }

  @Override
  public int append(List<Entry> entries) throws JournalException {
    List<UUID> ids = entries.stream().map(entry -> entry.heading().id()).toList();
    return write(ids, () -> new EntryInserts(connection, this::find).append(entries));
  }

  @Override
  public int take(List<KeptEntry> entries) throws JournalException {
    List<UUID> ids = entries.stream().map(kept -> kept.entry().heading().id()).toList();
    return write(ids, () -> new EntryInserts(connection, this::find).take(entries));
  }

  @Override
  public List<DamagedEntry> damaged() {
    return sound.damaged();
  }

  @Override
  public long size() throws JournalException {
    return read(
        () -> {
          try (Statement statement = connection.createStatement();
              ResultSet row = statement.executeQuery("SELECT count(*) FROM entry")) {
            row.next();
            return row.getLong(1);
          }
        });
  }

  private Optional<KeptEntry> find(String id) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(WHOLE + " WHERE id = ?")) {
      select.setString(1, id);
      try (ResultSet rows = select.executeQuery()) {
        return rows.next() ? sound.entry(rows) : Optional.empty();
      }
    }
  }

  @Override
  public List<Heading> headings(Selection selection) throws JournalException {
    return read(
        () -> {
          Query query = new Query("SELECT " + EntryRow.HEADING + " FROM entry", selection);
          try (PreparedStatement select = query.prepare(connection, FETCHED)) {
            List<Heading> found = headings(select);
            if (query.newestFirst()) {
              Collections.reverse(found);
            }
            return found;
          }
        });
  }

  private List<Heading> headings(PreparedStatement select) throws SQLException {
    List<Heading> found = new ArrayList<>();
    try (ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        sound.heading(rows, this::find).ifPresent(found::add);
      }
    }
    return found;
  }

  @Override
  public void each(Selection selection, Consumer<KeptEntry> reader) throws JournalException {
    if (selection.latest().isPresent()) {
      for (Heading heading : headings(selection)) {
        read(() -> find(heading.id().toString())).ifPresent(reader);
      }
      return;
    }
    read(
        () -> {
          Query query = new Query(WHOLE, selection);
          try (PreparedStatement select = query.prepare(connection, FETCHED);
              ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
              sound.entry(rows).ifPresent(reader);
            }
          }
          return null;
        });
  }

  @Override
  public Optional<Entry> entry(UUID id) throws JournalException {
    return read(() -> find(id.toString()).map(KeptEntry::entry));
  }

  @Override
  public Corrections corrections() throws JournalException {
    return Corrections.of(where("corrects IS NOT NULL"));
  }

  @Override
  public List<Heading> beginning(String id) throws JournalException {
    return where("substr(id, 1, ?) = ?", id.length(), id);
  }

  private List<Heading> where(String condition, Object... values) throws JournalException {
    return read(
        () -> {
          try (PreparedStatement select =
              connection.prepareStatement(
                  "SELECT " + EntryRow.HEADING + " FROM entry WHERE " + condition + Query.ORDER)) {
            for (int i = 0; i < values.length; i++) {
              select.setObject(i + 1, values[i]);
            }
            return headings(select);
          }
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
