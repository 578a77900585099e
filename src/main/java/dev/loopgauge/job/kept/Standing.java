package dev.loopgauge.job.kept;

import dev.loopgauge.journal.Heading;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Entries without those that were corrected, each correction in the place of what it corrects. */
final class Standing {
  private final Map<UUID, Heading> headings = new LinkedHashMap<>();
  private final Map<UUID, UUID> newer;

  /**
   * Of some entries.
   *
   * @param newer the entries that no longer stand, each with the one that corrects it
   */
  Standing(List<Heading> entries, Map<UUID, UUID> newer) {
    entries.forEach(heading -> headings.put(heading.id(), heading));
    this.newer = newer;
  }

  List<Heading> all() {
    List<Heading> standing = new ArrayList<>();
    for (Heading heading : headings.values()) {
      if (heading.corrects().filter(headings::containsKey).isEmpty()) {
        Optional.ofNullable(headings.get(last(heading.id()))).ifPresent(standing::add);
      }
    }
    return standing;
  }

  /** What an entry was corrected to in the end. */
  private UUID last(UUID id) {
    Set<UUID> seen = new HashSet<>();
    UUID last = id;
    while (newer.containsKey(last) && seen.add(last)) {
      last = newer.get(last);
    }
    return last;
  }
}
