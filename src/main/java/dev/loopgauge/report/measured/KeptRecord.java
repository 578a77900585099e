package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Sparse;
import java.util.Optional;
import java.util.Set;

/**
 * Whether a result that was to be kept in the journal was.
 *
 * @param id the entry's id
 * @param journal the journal's name: that of a file or database, without where it is
 * @param error why it was not kept; alone
 */
public record KeptRecord(Optional<String> id, Optional<String> journal, Optional<String> error)
    implements Sparse {
  /** Kept as this entry. */
  public static KeptRecord as(String id, String journal) {
    return new KeptRecord(Optional.of(id), Optional.of(journal), Optional.empty());
  }

  /** Not kept, for this reason. */
  public static KeptRecord not(String why) {
    return new KeptRecord(Optional.empty(), Optional.empty(), Optional.of(why));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("id", "journal", "error");
  }
}
