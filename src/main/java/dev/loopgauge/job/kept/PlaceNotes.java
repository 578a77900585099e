package dev.loopgauge.job.kept;

import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.logged.Logs;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is to be known of entries' places: which were corrected on several computers, and where the
 * order of keeping and that of time disagree.
 */
public final class PlaceNotes {
  private final Corrections corrections;
  private final Map<UUID, List<String>> notes = new HashMap<>();

  private PlaceNotes(Corrections corrections) {
    this.corrections = corrections;
  }

  /**
   * The notes, by the ids of the entries that stand.
   *
   * @param entries the entries in the order of keeping
   */
  static Map<UUID, List<String>> of(List<Heading> entries, Corrections corrections) {
    PlaceNotes places = new PlaceNotes(corrections);
    corrections.contests().forEach(contest -> places.add(contest.counts(), told(contest)));
    places.times(entries);
    return places.notes;
  }

  /**
   * The notes of entries that are listed, corrected ones among them, one sentence each.
   *
   * @param entries the entries in the order of keeping
   */
  public static List<String> listed(List<Heading> entries, Corrections corrections) {
    Set<UUID> ids = entries.stream().map(Heading::id).collect(Collectors.toSet());
    PlaceNotes places = new PlaceNotes(Corrections.NONE);
    places.times(entries);
    return Stream.concat(
            contests(corrections, ids).stream(),
            entries.stream().flatMap(entry -> places.notes(entry.id()).stream()))
        .toList();
  }

  private List<String> notes(UUID id) {
    return notes.getOrDefault(id, List.of());
  }

  private void add(UUID id, String note) {
    notes.computeIfAbsent(corrections.standing(id), standing -> new ArrayList<>()).add(note);
  }

  /**
   * Within a path; entries of several origins were put in order by their times already. Corrections
   * have the places of what they correct.
   */
  private void times(List<Heading> entries) {
    Map<Optional<String>, Heading> latest = new HashMap<>();
    for (Heading heading : entries) {
      if (heading.corrects().isPresent()) {
        continue;
      }
      Heading before = latest.putIfAbsent(heading.path(), heading);
      if (before == null) {
        continue;
      }
      if (heading.at().toInstant().isBefore(before.at().toInstant())) {
        add(heading.id(), told(before, heading));
      } else {
        latest.put(heading.path(), heading);
      }
    }
  }

  private static String told(Heading before, Heading after) {
    return ("entry %s, dated %s, counts as later than entry %s, dated %s, since it was kept later;"
            + " did a clock run back, or was it added afterwards?")
        .formatted(
            after.shortId(), Logs.brief(after.at()), before.shortId(), Logs.brief(before.at()));
  }

  /** That an entry was corrected on several computers, in a sentence. */
  static String told(Corrections.Contest contest) {
    return "entry %s was corrected on several computers, by %s; %s counts, as the later one"
        .formatted(
            Heading.shortened(contest.corrected()),
            contest.corrections().stream()
                .map(Heading::shortened)
                .collect(Collectors.joining(" and ")),
            Heading.shortened(contest.counts()));
  }

  /** What is to be known of corrections of these entries, or by them, one sentence each. */
  public static List<String> contests(Corrections corrections, Set<UUID> ids) {
    return corrections.contests().stream()
        .filter(
            contest ->
                ids.contains(contest.corrected())
                    || contest.corrections().stream().anyMatch(ids::contains))
        .map(PlaceNotes::told)
        .toList();
  }
}
