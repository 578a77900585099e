package dev.loopgauge.job.kept;

import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Heading;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Entries in their places in the record.
 *
 * @param standing those that no other corrects, each correction in the place of what it corrects
 * @param notes what is to be known of their places, one sentence each, by their ids
 */
public record Placed(List<Heading> standing, Map<UUID, List<String>> notes) {
  /**
   * Finds the places.
   *
   * @param entries the entries in the order of keeping
   */
  static Placed of(List<Heading> entries, Corrections corrections) {
    Map<UUID, Heading> byId = new HashMap<>();
    entries.forEach(heading -> byId.put(heading.id(), heading));
    Set<Heading> standing = new LinkedHashSet<>();
    for (Heading heading : entries) {
      if (heading.corrects().filter(byId::containsKey).isEmpty()) {
        Optional.ofNullable(byId.get(corrections.standing(heading.id()))).ifPresent(standing::add);
      }
    }
    return new Placed(List.copyOf(standing), PlaceNotes.of(entries, corrections));
  }

  /** What is to be known of the place of an entry. */
  List<String> notes(UUID id) {
    return notes.getOrDefault(id, List.of());
  }

  /** All that is to be known, in the order of the entries. */
  public List<String> allNotes() {
    return standing.stream().flatMap(heading -> notes(heading.id()).stream()).toList();
  }
}
