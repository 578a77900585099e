package dev.loopgauge.journal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Which entries no longer stand, and what stands in their places. One journal takes one correction
 * of an entry; where two computers each corrected it, an import brings both together: the one that
 * was kept last counts.
 */
public final class Corrections {
  /** No corrections. */
  public static final Corrections NONE = of(List.of());

  private final Map<UUID, UUID> old = new LinkedHashMap<>();
  private final Map<UUID, UUID> newer = new HashMap<>();
  private final List<Contest> contests = new ArrayList<>();

  /**
   * An entry that was corrected on several computers.
   *
   * @param corrected the entry
   * @param corrections what each computer corrected it to in the end; the last one counts
   */
  public record Contest(UUID corrected, List<UUID> corrections) {
    /** Copies the list. */
    public Contest {
      corrections = List.copyOf(corrections);
    }

    /** The one that counts. */
    public UUID counts() {
      return corrections.get(corrections.size() - 1);
    }
  }

  private Corrections(List<Heading> correcting) {
    for (Heading heading : correcting) {
      heading.corrects().ifPresent(corrected -> old.put(heading.id(), corrected));
    }
    ends().forEach(this::settle);
  }

  /**
   * Corrections as they were kept.
   *
   * @param correcting the entries that correct another, in the order of keeping
   */
  public static Corrections of(List<Heading> correcting) {
    return new Corrections(correcting);
  }

  /** What each entry was corrected to in the end, in the order of keeping, by the entry. */
  private Map<UUID, List<UUID>> ends() {
    Set<UUID> corrected = new HashSet<>(old.values());
    Map<UUID, List<UUID>> ends = new LinkedHashMap<>();
    for (UUID id : old.keySet()) {
      if (!corrected.contains(id)) {
        List<UUID> way = way(id);
        ends.computeIfAbsent(way.get(way.size() - 1), first -> new ArrayList<>()).add(id);
      }
    }
    return ends;
  }

  /** From an entry back to the first one that it goes back to. */
  private List<UUID> way(UUID id) {
    List<UUID> way = new ArrayList<>();
    Set<UUID> seen = new HashSet<>();
    for (UUID next = id; next != null && seen.add(next); next = old.get(next)) {
      way.add(next);
    }
    return way;
  }

  private void settle(UUID first, List<UUID> ends) {
    UUID counts = ends.get(ends.size() - 1);
    lead(counts);
    for (UUID other : ends.subList(0, ends.size() - 1)) {
      newer.put(other, counts);
      lead(other);
    }
    if (ends.size() > 1) {
      contests.add(new Contest(first, ends));
    }
  }

  private void lead(UUID end) {
    List<UUID> way = way(end);
    for (int i = 1; i < way.size(); i++) {
      newer.putIfAbsent(way.get(i), way.get(i - 1));
    }
  }

  /** Whether no other entry takes its place. */
  public boolean stands(UUID id) {
    return !newer.containsKey(id);
  }

  /** The entry that takes its place next. */
  public Optional<UUID> newer(UUID id) {
    return Optional.ofNullable(newer.get(id));
  }

  /** The entry that stands in its place; itself where none took it. */
  public UUID standing(UUID id) {
    UUID last = id;
    Set<UUID> seen = new HashSet<>();
    while (newer.containsKey(last) && seen.add(last)) {
      last = newer.get(last);
    }
    return last;
  }

  /** The entries that were corrected on several computers. */
  public List<Contest> contests() {
    return List.copyOf(contests);
  }
}
