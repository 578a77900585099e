package dev.loopgauge.report.html;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that is known of one path.
 *
 * @param name the path
 * @param readings its measurements in the order of their time, at least one
 * @param past its trusted readings in the journal in the order of their time, this show's too
 * @param budget its part of a budget document, where there is one
 */
record PathStory(
    String name, List<ReadDocument> readings, Optional<PathRecord> budget, List<Logged> past) {
  /** Copies the list. */
  PathStory {
    readings = List.copyOf(readings);
    past = List.copyOf(past);
  }

  /** The paths that were measured, the worst first, else as they first come. */
  static List<PathStory> of(List<ReadDocument> readings, List<Heading> past, Budgets budgets) {
    Map<String, List<ReadDocument>> byPath = new LinkedHashMap<>();
    readings.stream()
        .filter(ReadDocument::measures)
        .forEach(r -> byPath.computeIfAbsent(r.path(), path -> new ArrayList<>()).add(r));
    return byPath.entrySet().stream()
        .map(e -> story(past, e.getKey(), e.getValue(), budgets))
        .sorted(Comparator.comparing(PathStory::standing, Standings.ORDER))
        .toList();
  }

  private static PathStory story(
      List<Heading> known, String name, List<ReadDocument> readings, Budgets budgets) {
    List<Logged> past =
        known.stream()
            .filter(heading -> heading.path().equals(Optional.of(name)))
            .flatMap(heading -> Logged.of(heading).stream())
            .toList();
    return new PathStory(name, readings, budgets.path(name), past);
  }

  /** The last measurement: what is true now. */
  ReadDocument latest() {
    return readings.get(readings.size() - 1);
  }

  /** How the last measurement stands over all that was heard. */
  Judgement standing() {
    return Standings.of(latest());
  }

  /** What the last measurement came to, in a sentence. */
  String sentence() {
    return Telling.verdict(latest());
  }

  /** What came of it between before and after the show; during stands in for after. */
  Optional<BeforeAndAfter> shift() {
    return last(When.BEFORE)
        .flatMap(before -> later().map(after -> BeforeAndAfter.of(before, after)))
        .filter(BeforeAndAfter::isCompared);
  }

  /** Whether it was measured before the show and not since. */
  boolean isMissingAfter() {
    return last(When.BEFORE).isPresent() && later().isEmpty();
  }

  private Optional<ReadDocument> later() {
    return last(When.AFTER).or(() -> last(When.DURING));
  }

  /** The last reading of a part of the day. */
  Optional<ReadDocument> last(When when) {
    return readings.stream()
        .filter(reading -> reading.when().equals(Optional.of(when)))
        .reduce((one, next) -> next);
  }
}
