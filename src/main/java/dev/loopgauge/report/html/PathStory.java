package dev.loopgauge.report.html;

import dev.loopgauge.journal.When;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.measured.HostCheckRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
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

  /** The paths that were measured: first those that need attention, else as they first come. */
  static List<PathStory> of(ReportDocument report, Budgets budgets) {
    Map<String, List<ReadDocument>> byPath = new LinkedHashMap<>();
    report.readings().stream()
        .filter(ReadDocument::measures)
        .forEach(r -> byPath.computeIfAbsent(r.path(), path -> new ArrayList<>()).add(r));
    return byPath.entrySet().stream()
        .map(e -> story(report, e.getKey(), e.getValue(), budgets))
        .sorted(Comparator.comparing(story -> !story.needsAttention()))
        .toList();
  }

  private static PathStory story(
      ReportDocument report, String name, List<ReadDocument> readings, Budgets budgets) {
    List<Logged> past =
        report.past().stream()
            .filter(heading -> heading.path().equals(Optional.of(name)))
            .flatMap(heading -> Logged.of(heading).stream())
            .toList();
    return new PathStory(name, readings, budgets.path(name), past);
  }

  /** The last measurement: what is true now. */
  ReadDocument latest() {
    return readings.get(readings.size() - 1);
  }

  /** Whether the last measurement calls for somebody to look. */
  boolean needsAttention() {
    boolean hostFails =
        latest()
            .measured()
            .flatMap(MeasurementDocument::hostCheck)
            .flatMap(HostCheckRecord::agrees)
            .filter(agrees -> !agrees)
            .isPresent();
    return hostFails || !List.of("within-budget", "measured").contains(latest().outcome());
  }

  /** What came of it between before and after the show. */
  Optional<BeforeAndAfter> shift() {
    Optional<ReadDocument> before = last(When.BEFORE);
    Optional<ReadDocument> after = last(When.AFTER);
    return before.isPresent() && after.isPresent()
        ? BeforeAndAfter.of(before.get(), after.get())
        : Optional.empty();
  }

  /** The last trusted reading of a part of the day. */
  Optional<ReadDocument> last(When when) {
    return readings.stream()
        .filter(reading -> reading.when().equals(Optional.of(when)))
        .filter(reading -> reading.delay().isPresent())
        .reduce((one, next) -> next);
  }
}
