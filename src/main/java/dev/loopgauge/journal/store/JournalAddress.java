package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;

/** Where a journal is kept: a file, or a PostgreSQL database. */
public sealed interface JournalAddress {
  /** What documents call it: the file's or the database's name alone. */
  String name();

  /** The folder of the recordings kept beside it. */
  Path recordings();

  /** One SQLite file, whatever characters its name has. */
  record InFile(Path file) implements JournalAddress {
    @Override
    public String name() {
      return file.getFileName().toString();
    }

    @Override
    public Path recordings() {
      return file.resolveSibling(file.getFileName() + "-captures");
    }
  }

  /** A database by its address; the recordings are in the current folder. */
  record InDatabase(DatabaseAddress database) implements JournalAddress {
    @Override
    public String name() {
      return database.name();
    }

    @Override
    public Path recordings() {
      return Path.of("loopgauge-captures");
    }
  }

  /**
   * What was said.
   *
   * @param said a file, or {@code jdbc:postgresql://HOST[:PORT]/DATABASE}
   * @throws JournalException when it is neither; the message repeats nothing that could be a
   *     password
   */
  static JournalAddress of(String said) throws JournalException {
    if (said.indexOf('\uFFFD') >= 0) {
      throw new JournalException(
          "the journal's name has letters that this shell's language setting lost",
          "set LC_ALL=C.UTF-8, or your own language with UTF-8, and name it again");
    }
    String start = said.strip().toLowerCase(Locale.ROOT);
    if (start.startsWith(DatabaseAddress.START)) {
      return new InDatabase(DatabaseAddress.of(said.strip()));
    }
    if (start.startsWith("jdbc:") || start.matches("(?s)postgres(ql)?://.*")) {
      throw new JournalException(
          "expected a file or an address that begins with jdbc:postgresql://, found another address",
          "name it as jdbc:postgresql://HOST/DATABASE; a file of such a name as ./NAME");
    }
    try {
      Path file = Path.of(said);
      if (file.getFileName() == null) {
        throw new JournalException(
            "expected the name of a file, found '" + said + "'", "name a file");
      }
      return new InFile(file);
    } catch (InvalidPathException e) {
      throw new JournalException(
          "expected the name of a file, found '" + said + "'", "name another file", e);
    }
  }
}
