package dev.loopgauge.estimate.result;

import java.util.List;

/** What came of looking for a delay: a number, or the reasons why there is none. */
public sealed interface Estimate {
  /** What a person must know about the capture. */
  List<Finding> findings();

  /**
   * A trustworthy number.
   *
   * @param measurement the number and what goes with it
   * @param findings what to know besides; none of them refuses
   */
  record Found(Measurement measurement, List<Finding> findings) implements Estimate {
    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException when a finding refuses
     */
    public Found {
      findings = List.copyOf(findings);
      if (Finding.anyRefuses(findings)) {
        throw new IllegalArgumentException("a refusing finding goes without a number: " + findings);
      }
    }
  }

  /**
   * No trustworthy number.
   *
   * @param findings why; at least one of them refuses
   */
  record Refused(List<Finding> findings) implements Estimate {
    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException when no finding refuses
     */
    public Refused {
      findings = List.copyOf(findings);
      if (!Finding.anyRefuses(findings)) {
        throw new IllegalArgumentException("a refusal needs a reason: " + findings);
      }
    }
  }
}
