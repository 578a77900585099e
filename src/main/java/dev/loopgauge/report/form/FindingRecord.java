package dev.loopgauge.report.form;

import dev.loopgauge.estimate.result.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Something that a person must know.
 *
 * @param code its fixed name
 * @param refuses whether there is no number because of it; left out where it is no finding of a
 *     measurement
 * @param text what was found
 * @param hint what to try
 */
public record FindingRecord(
    Optional<String> code, Optional<Boolean> refuses, Optional<String> text, Optional<String> hint)
    implements Sparse {
  /** Of findings. */
  public static List<FindingRecord> of(List<Finding> findings) {
    List<FindingRecord> records = new ArrayList<>();
    for (Finding finding : findings) {
      records.add(of(finding));
    }
    return records;
  }

  /** Of a finding. */
  public static FindingRecord of(Finding finding) {
    return new FindingRecord(
        Optional.of(finding.code().label()),
        Optional.of(finding.refuses()),
        Optional.of(finding.text()),
        Optional.of(finding.hint()));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("refuses");
  }

  /** Whether it refuses the number. */
  public boolean isRefusal() {
    return refuses.orElse(false);
  }

  /** Tells it with what to try. */
  public void tell(Sheet sheet) {
    tell(sheet, "finding");
  }

  /** Tells it under a label, with what to try. */
  public void tell(Sheet sheet, String label) {
    text.or(() -> code).ifPresent(found -> sheet.row(label, found));
    hint.ifPresent(remedy -> sheet.row("  try", remedy));
  }
}
