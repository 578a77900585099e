package dev.loopgauge.report.logged;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.ComparedAspect;
import java.util.List;

/** What is not as it was about a path, as documents hold it. */
public record ChangeRecord(ComparedAspect aspect, String text) {
  static List<ChangeRecord> all(List<AspectChange> changes) {
    return changes.stream()
        .map(change -> new ChangeRecord(change.aspect(), AspectWords.of(change)))
        .toList();
  }
}
