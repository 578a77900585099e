package dev.loopgauge.journal.store;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.EntryDigest;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Keeping;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.StoredText;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Adds entries within one transaction. */
final class EntryInserts {
  private final Connection connection;
  private final EntryRows.Lookup finder;
  private OwnOrigin own;

  /** Keeps other writers waiting from here on. */
  EntryInserts(Connection connection, EntryRows.Lookup finder) throws SQLException {
    this.connection = connection;
    this.finder = finder;
    this.own = OwnOrigin.readAndLock(connection);
  }

  /** Adds entries that are kept here first; gives how many were new. */
  int append(List<Entry> entries) throws SQLException, JournalException {
    int added = 0;
    for (Entry entry : entries) {
      if (isNew(entry)) {
        checkOnce(entry.heading());
        Keeping keeping = own.next(entry.heading(), EntryDigest.of(entry));
        insert(entry, Optional.of(keeping));
        own = own.with(keeping);
        added++;
      }
    }
    finish(entries);
    return added;
  }

  /** Adds entries with their places in the journal that kept them first. */
  int take(List<KeptEntry> entries) throws SQLException, JournalException {
    int added = 0;
    for (KeptEntry kept : entries) {
      if (isNew(kept.entry())) {
        insert(kept.entry(), kept.keeping());
        own = kept.keeping().isPresent() ? own : own.withUnchained();
        added++;
      }
    }
    finish(entries.stream().map(KeptEntry::entry).toList());
    return added;
  }

  private void finish(List<Entry> entries) throws SQLException, JournalException {
    own.write(connection);
    for (Entry entry : entries) {
      checkCorrected(entry.heading());
    }
  }

  private boolean isNew(Entry entry) throws SQLException, JournalException {
    UUID id = entry.heading().id();
    Optional<String> there = digest(id);
    if (there.isPresent() && !isSame(there.get(), entry)) {
      throw new JournalException(
          "entry " + id + " is in the journal already, with other contents",
          "entries are never changed: is this file from another journal, or edited?");
    }
    return there.isEmpty();
  }

  /** Exports lack the folders that entries of older versions have in names. */
  private boolean isSame(String digest, Entry entry) throws SQLException {
    return digest.equals(EntryDigest.of(entry))
        || finder
            .by(entry.heading().id().toString())
            .map(kept -> EntryDigest.of(kept.entry().withoutFolders()))
            .filter(EntryDigest.of(entry)::equals)
            .isPresent();
  }

  /** The digest of an entry that is there; nothing but that where it is half there. */
  private Optional<String> digest(UUID id) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT detail.digest FROM entry LEFT JOIN detail ON detail.entry_id = entry.id"
                + " WHERE entry.id = ?")) {
      select.setString(1, id.toString());
      try (ResultSet rows = select.executeQuery()) {
        return rows.next()
            ? Optional.of(Optional.ofNullable(rows.getString(1)).orElse(""))
            : Optional.empty();
      }
    }
  }

  private void insert(Entry entry, Optional<Keeping> keeping) throws SQLException {
    try (PreparedStatement insert = insert("entry", EntryRow.HEADING + ", " + EntryRow.KEEPING)) {
      EntryRow.writeHeading(insert, entry.heading());
      EntryRow.writeKeeping(insert, entry.heading(), keeping);
      insert.executeUpdate();
    }
    if (entry.chain().isPresent()) {
      insert(entry.chain().get());
    }
    try (PreparedStatement insert = insert("detail", EntryRow.DETAIL)) {
      EntryRow.writeDetail(insert, entry);
      insert.executeUpdate();
    }
  }

  private void insert(ChainText chain) throws SQLException {
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

  /** Two laptops may both be about to correct it: whoever writes first has done so. */
  private void checkOnce(Heading heading) throws SQLException, JournalException {
    if (heading.corrects().isEmpty()) {
      return;
    }
    try (PreparedStatement select =
        connection.prepareStatement("SELECT id FROM entry WHERE corrects = ?")) {
      select.setString(1, heading.corrects().get().toString());
      try (ResultSet rows = select.executeQuery()) {
        if (rows.next()) {
          throw new JournalException(
              "entry %s was corrected already, by entry %s"
                  .formatted(heading.corrects().get(), rows.getString(1)),
              "`loopgauge journal show` shows that one; correct it instead");
        }
      }
    }
  }

  private void checkCorrected(Heading heading) throws SQLException, JournalException {
    if (heading.corrects().isPresent() && digest(heading.corrects().get()).isEmpty()) {
      throw new JournalException(
          "there is no entry " + heading.corrects().get() + " to correct",
          "`loopgauge journal list` shows those that there are");
    }
  }
}
