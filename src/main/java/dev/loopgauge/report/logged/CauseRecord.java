package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Cause;
import java.util.List;

/** What may have made a path later or earlier, as documents hold it. */
public record CauseRecord(String cause, String text, Cause.Standing standing) {
  static List<CauseRecord> all(List<Cause> causes) {
    return causes.stream()
        .map(cause -> new CauseRecord(cause.name(), cause.text(), cause.standing()))
        .toList();
  }
}
