package dev.loopgauge.journal.store;

import dev.loopgauge.journal.DamagedEntry;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.EntryDigest;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.KeptEntry;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads rows as far as they are what was stored, and remembers those that aren't. */
final class EntryRows {
  private final Map<String, DamagedEntry> damaged = new LinkedHashMap<>();

  /** A way from a row to what it holds; a row that holds nothing such throws. */
  private interface Reading<T> {
    T of(ResultSet row) throws SQLException;
  }

  /** Finds a whole entry. */
  interface Lookup {
    /** By its id; empty where it is damaged. */
    Optional<KeptEntry> by(String id) throws SQLException;
  }

  /** Those that aren't, each once. */
  List<DamagedEntry> damaged() {
    return List.copyOf(damaged.values());
  }

  /** The entry of a row with all columns. */
  Optional<KeptEntry> entry(ResultSet row) throws SQLException {
    return sound(row, EntryRows::whole);
  }

  /**
   * The heading of a row with the heading's columns.
   *
   * @param whole finds an entry by its id: in rows of older versions only the whole can be checked
   */
  Optional<Heading> heading(ResultSet row, Lookup whole) throws SQLException {
    String digest = row.getString("heading_digest");
    return digest == null
        ? whole.by(row.getString("id")).map(kept -> kept.entry().heading())
        : sound(row, r -> checked(EntryRow.readHeading(r), digest));
  }

  private <T> Optional<T> sound(ResultSet row, Reading<T> reading) throws SQLException {
    try {
      return Optional.of(reading.of(row));
    } catch (UnsoundException e) {
      note(row.getString("id"), e.getMessage());
    } catch (RuntimeException e) {
      note(row.getString("id"), "holds what no entry can hold");
    }
    return Optional.empty();
  }

  private void note(String id, String what) {
    damaged.putIfAbsent(String.valueOf(id), new DamagedEntry(String.valueOf(id), what));
  }

  private static KeptEntry whole(ResultSet row) throws SQLException {
    String digest = row.getString("digest");
    if (digest == null) {
      throw new UnsoundException("is half there: only its heading is stored");
    }
    Entry entry = EntryRow.readEntry(row);
    if (!EntryDigest.matches(digest, entry)) {
      throw new UnsoundException("is not what was stored: its digest doesn't match");
    }
    return new KeptEntry(entry, EntryRow.readKeeping(row));
  }

  private static Heading checked(Heading heading, String digest) {
    if (!digest.equals(EntryDigest.of(heading))) {
      throw new UnsoundException("is not what was stored: its digest doesn't match");
    }
    return heading;
  }

  /** What is wrong with a row, part of a sentence. */
  private static final class UnsoundException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnsoundException(String what) {
      super(what);
    }
  }
}
