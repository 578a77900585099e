package dev.loopgauge.report.measured;

import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.verdict.OverallVerdict;
import java.util.Optional;
import java.util.Set;

/**
 * What a soak came to.
 *
 * @param outcome what the delay came to; documents of older versions say how the soak went
 * @param verdict how everything that was heard stands; documents of older versions have none
 * @param soak what happened
 * @param comparison how the delay since its last step stands against the budget, where there is one
 * @param hostCheck what that delay says about a reported one, where that was asked
 * @param kept whether it was kept in the journal, where that was asked
 */
public record SoakDocument(
    String command,
    String outcome,
    Optional<VerdictRecord> verdict,
    SoakRecord soak,
    Optional<ComparisonRecord> comparison,
    Optional<HostCheckRecord> hostCheck,
    Optional<KeptRecord> kept)
    implements Keepable, Sparse {
  /** Why a soak ended that somebody stopped. */
  public static final String STOPPED = "it was interrupted";

  /**
   * The document of a soak.
   *
   * @param askedMinutes how long it should go on
   * @param ended why it ended before, if the sound failed
   */
  public static SoakDocument of(
      Soak soak,
      double askedMinutes,
      Optional<String> ended,
      OverallVerdict verdict,
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck) {
    return new SoakDocument(
        "soak",
        outcome(soak, comparison).label(),
        Optional.of(VerdictRecord.of(verdict)),
        SoakRecord.of(soak, askedMinutes, ended),
        comparison.map(ComparisonRecord::of),
        hostCheck.map(HostCheckRecord::of),
        Optional.empty());
  }

  @Override
  public SoakDocument withKept(KeptRecord now) {
    return new SoakDocument(
        command, outcome, verdict, soak, comparison, hostCheck, Optional.of(now));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("verdict", "hostCheck", "kept");
  }

  private static Outcome outcome(Soak soak, Optional<Comparison> comparison) {
    return soak.level().isEmpty()
        ? Outcome.NOT_TRUSTWORTHY
        : comparison.map(Outcome::of).orElse(Outcome.MEASURED);
  }

  /** The delay since the last step, where one was read. */
  public Optional<ShownDelay> delay() {
    return soak.delay();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(headline());
    soak.delay().ifPresent(delay -> addDelay(sheet, delay));
    soak.endedBy().filter(why -> !why.equals(STOPPED)).ifPresent(why -> sheet.row("ended", why));
    soak.tell(sheet);
    return sheet.toString();
  }

  /** The first line: the worst of what happened. */
  public String headline() {
    return Headline.of(line(), verdict).line();
  }

  private String line() {
    String listened = SoakRecord.time(soak.heardSeconds().doubleValue());
    if (soak.endedBy().equals(Optional.of(STOPPED))) {
      return "STOPPED after %s: %s."
          .formatted(
              listened,
              soak.oddTakes() == 0
                  ? "nothing was lost, the delay stayed"
                  : "something happened before");
    }
    if (soak.endedBy().isPresent()) {
      return "BROKE OFF: the sound failed after %s.".formatted(listened);
    }
    return soak.isClean()
        ? "CLEAN: for %s nothing was lost, the delay stayed.".formatted(listened)
        : "NOT CLEAN: something happened within %s.".formatted(listened);
  }

  private void addDelay(Sheet sheet, ShownDelay delay) {
    sheet.row("delay", soak.told(delay));
    if (comparison.isPresent()) {
      sheet.row("verdict", Verdicts.line(delay, soak.isUncalibrated(), false, comparison));
      sheet.row("budget", Figures.predicted(comparison.get(), delay));
      Figures.allowance(comparison.get()).ifPresent(more -> sheet.row("", more));
    }
    hostCheck.flatMap(HostCheckRecord::text).ifPresent(text -> sheet.row("host check", text));
  }
}
