package dev.loopgauge.job.recorded;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.HostCheck;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One path read twice, with a plug-in active and bypassed.
 *
 * @param active the path with the plug-in active
 * @param bypassed the same path with it bypassed
 */
record ActiveAndBypassed(Estimate active, Estimate bypassed) {
  /**
   * The path with the plug-in active, and the findings of both; refused where either is, or where
   * their rates differ, since then there is no difference.
   */
  Estimate estimate() {
    List<Finding> findings = new ArrayList<>(active.findings());
    bypassed.findings().forEach(finding -> findings.add(ofBypassed(finding)));
    if (active instanceof Estimate.Found on && bypassed instanceof Estimate.Found off) {
      SampleRate rate = on.measurement().delay().rate();
      SampleRate other = off.measurement().delay().rate();
      if (rate.equals(other)) {
        return new Estimate.Found(on.measurement(), findings);
      }
      findings.add(mismatch(rate, other));
    }
    return new Estimate.Refused(findings);
  }

  private static Finding ofBypassed(Finding finding) {
    return new Finding(
        finding.code(), finding.refuses(), "when bypassed: " + finding.text(), finding.hint());
  }

  private static Finding mismatch(SampleRate rate, SampleRate other) {
    return new Finding(
        FindingCode.RATE_MISMATCH,
        true,
        "the rates differ: %d Hz when active, %d Hz when bypassed"
            .formatted(rate.hertz(), other.hertz()),
        "record both in one session at one rate");
  }

  /** What the plug-in adds, compared with what is reported; empty where there is no difference. */
  Optional<HostCheck> check(HostReport reported) {
    if (estimate() instanceof Estimate.Found
        && active instanceof Estimate.Found on
        && bypassed instanceof Estimate.Found off) {
      return Optional.of(
          HostCheck.ofDifference(
              on.measurement(), off.measurement(), reported.at(on.measurement().delay().rate())));
    }
    return Optional.empty();
  }
}
