package dev.loopgauge.verify.verdict;

import dev.loopgauge.chain.Expectation;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.PlainNumber;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges a reading, aspect by aspect.
 *
 * @param found the reading
 * @param expected what its path's return should be like; empty where no path is known
 */
record ReadingJudge(Estimate.Found found, Optional<Expectation> expected) {
  /** A refusal leaves the delay open, and says nothing of the rest. */
  static List<AspectVerdict> ofRefused(Estimate.Refused refused) {
    Finding why = refused.findings().stream().filter(Finding::refuses).findFirst().orElseThrow();
    return List.of(AspectVerdict.undecided(Aspect.DELAY, why.text()));
  }

  /** All aspects. */
  List<AspectVerdict> aspects(
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck,
      Optional<AspectVerdict> picture) {
    List<AspectVerdict> aspects = new ArrayList<>();
    aspects.add(DelayJudge.of(comparison, measured().method()));
    aspects.add(polarity());
    aspects.add(arrivals());
    aspects.add(lostSound());
    aspects.add(clocks());
    aspects.add(level());
    aspects.add(response());
    aspects.add(clipping());
    Optional<AspectVerdict> host =
        hostCheck.isPresent() ? HostJudge.of(hostCheck.get()) : Optional.empty();
    for (Optional<AspectVerdict> further : List.of(host, picture)) {
      if (further.isPresent()) {
        aspects.add(further.get());
      }
    }
    return aspects;
  }

  private Measurement measured() {
    return found.measurement();
  }

  private Optional<Finding> finding(FindingCode code) {
    for (Finding finding : found.findings()) {
      if (finding.judged() && finding.code() == code) {
        return Optional.of(finding);
      }
    }
    return Optional.empty();
  }

  /** Normal unless the file says otherwise. */
  private AspectVerdict polarity() {
    if (measured().polarity() == Polarity.UNDETERMINED) {
      String turned = "the path turns the phase: neither inverted nor not";
      return expected.flatMap(Expectation::inverted).isPresent()
          ? AspectVerdict.undecided(Aspect.POLARITY, turned)
          : AspectVerdict.notJudged(Aspect.POLARITY, turned);
    }
    boolean inverted = measured().polarity() == Polarity.INVERTED;
    String text = "the return is " + (inverted ? "inverted" : "not inverted");
    if (expected.isEmpty()) {
      return AspectVerdict.notJudged(Aspect.POLARITY, text);
    }
    boolean asExpected = expected.get().inverted().orElse(false) == inverted;
    return AspectVerdict.of(Aspect.POLARITY, asExpected, text);
  }

  private AspectVerdict arrivals() {
    int count = measured().arrivals().size();
    if (measured().ambiguous()) {
      return AspectVerdict.undecided(
          Aspect.ARRIVALS, "two arrivals are almost equally loud; either may be the path");
    }
    return AspectVerdict.of(
        Aspect.ARRIVALS, true, count < 2 ? "one arrival" : count + " arrivals, one is measured");
  }

  private AspectVerdict lostSound() {
    Optional<Finding> dropout = finding(FindingCode.DROPOUT);
    return dropout.isPresent()
        ? AspectVerdict.of(Aspect.LOST_SOUND, false, lost(dropout.get()))
        : AspectVerdict.of(Aspect.LOST_SOUND, true, "no sound was lost");
  }

  private String lost(Finding finding) {
    List<MissingSound> lost = measured().lostSound();
    if (lost.isEmpty()) {
      return finding.text();
    }
    String more =
        switch (lost.size()) {
          case 1 -> "";
          case 2 -> ", and once more";
          default -> ", and " + (lost.size() - 1) + " times more";
        };
    return PlainNumber.of(lost.get(0).ms(), 1)
        + " ms at "
        + PlainNumber.clock(lost.get(0).atSeconds())
        + more;
  }

  private AspectVerdict clocks() {
    Optional<Finding> drifts = finding(FindingCode.CLOCKS_NOT_LOCKED);
    Optional<ClockDrift> drift = measured().clockDrift();
    if (drift.isPresent()) {
      return drifts.isPresent()
          ? ClockJudge.notLocked(drift.get())
          : ClockJudge.locked(drift.get());
    }
    return drifts.isPresent()
        ? AspectVerdict.of(Aspect.CLOCKS, false, drifts.get().text())
        : AspectVerdict.notJudged(Aspect.CLOCKS, "too few repeats to tell the clocks apart");
  }

  private AspectVerdict level() {
    return new LevelJudge(measured(), finding(FindingCode.LEVEL_MOVES)).level(expected);
  }

  private AspectVerdict response() {
    return new LevelJudge(measured(), Optional.empty()).response(expected);
  }

  /** Clipping of which nothing tells how far it moves the delay refuses the reading. */
  private AspectVerdict clipping() {
    Optional<Finding> clipped = finding(FindingCode.CLIPPED);
    String text =
        clipped.isPresent()
            ? clipped.get().text() + ", which the uncertainty counts"
            : "not clipped";
    return AspectVerdict.of(Aspect.CLIPPING, true, text);
  }
}
