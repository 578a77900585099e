package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Keeping;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The entries of each origin one after the other, in the order of their numbers. What is missing of
 * this journal's own is a loss; of another journal only a part may ever have come here. Journals
 * that were copied and both used have the same name, and then two entries of one number.
 */
final class EntryChain {
  private final OwnOrigin own;
  private final List<String> findings = new ArrayList<>();
  private String origin = "";
  private long number;
  private long unchained;
  private boolean seenOwn;
  private Set<String> before = Set.of();
  private Set<String> links = new HashSet<>();

  EntryChain(OwnOrigin own) {
    this.own = own;
  }

  /** The next entry. */
  void add(ResultSet row) throws SQLException {
    String next = row.getString("origin");
    if (next == null) {
      unchained++;
      return;
    }
    if (!next.equals(origin)) {
      endOrigin();
      origin = next;
      number = 0;
      links = new HashSet<>(Set.of(origin));
    }
    moveTo(row.getLong("number"));
    check(row);
    links.add(row.getString("link"));
  }

  private void moveTo(long next) {
    if (next == number) {
      return;
    }
    missing(number + 1, next - 1);
    before = next == number + 1 ? links : Set.of();
    links = new HashSet<>();
    number = next;
  }

  private void missing(long from, long to) {
    if (from <= to && origin.equals(own.id())) {
      findings.add(
          from == to
              ? "entry number " + from + " of this journal is missing"
              : "entries number " + from + " to " + to + " of this journal are missing");
    }
  }

  private void check(ResultSet row) throws SQLException {
    String digest = row.getString("digest");
    String link = row.getString("link");
    if (digest != null
        && !before.isEmpty()
        && before.stream().noneMatch(last -> Keeping.link(last, digest).equals(link))) {
      findings.add(
          "entry "
              + row.getString("id")
              + " doesn't follow number "
              + (number - 1)
              + ": one of the two was exchanged");
    }
  }

  private void endOrigin() {
    if (origin.equals(own.id())) {
      missing(number + 1, own.kept());
      seenOwn = true;
    }
  }

  /** What is wrong, one sentence each, once all were added. */
  List<String> findings() {
    endOrigin();
    if (!seenOwn) {
      origin = own.id();
      missing(1, own.kept());
    }
    if (unchained != own.unchained()) {
      findings.add(
          "of %d entries without a number, %d are there".formatted(own.unchained(), unchained));
    }
    return List.copyOf(findings);
  }
}
