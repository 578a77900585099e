package dev.loopgauge.report.measured;

import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.Verdict;
import java.util.Optional;
import java.util.Set;

/**
 * What a soak came to.
 *
 * @param outcome {@code clean}, {@code not-clean} or {@code broke-off}
 * @param soak what happened
 * @param comparison how the delay since its last step stands against the budget, where there is one
 * @param hostCheck what that delay says about a reported one, where that was asked
 */
public record SoakDocument(
    String command,
    String outcome,
    SoakRecord soak,
    Optional<ComparisonRecord> comparison,
    Optional<HostCheckRecord> hostCheck)
    implements Document, Sparse {
  /** The outcome of a soak in which nothing happened. */
  public static final String CLEAN = "clean";

  /** The outcome of a soak that the failing sound ended. */
  public static final String BROKE_OFF = "broke-off";

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
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck) {
    return new SoakDocument(
        "soak",
        ended.isPresent() ? BROKE_OFF : soak.isClean() ? CLEAN : "not-clean",
        SoakRecord.of(soak, askedMinutes, ended),
        comparison.map(ComparisonRecord::of),
        hostCheck.map(HostCheckRecord::of));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("hostCheck");
  }

  /** Whether nothing happened, and the delay is what budget and host say it is. */
  public boolean isGood() {
    return outcome.equals(CLEAN)
        && comparison.map(c -> c.verdict().equals(Optional.of(Verdict.WITHIN))).orElse(true)
        && hostCheck.filter(HostCheckRecord::fails).isEmpty();
  }

  /** The delay since the last step, where one was read. */
  public Optional<ShownDelay> delay() {
    return soak.delay();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(verdict());
    soak.delay().ifPresent(delay -> addDelay(sheet, delay));
    soak.endedBy().ifPresent(why -> sheet.row("ended", why));
    soak.tell(sheet);
    return sheet.toString();
  }

  private String verdict() {
    String listened = SoakRecord.time(soak.heardSeconds().doubleValue());
    return switch (outcome) {
      case BROKE_OFF -> "BROKE OFF after %s.".formatted(listened);
      case CLEAN -> "CLEAN for %s: nothing was lost, the delay stayed.".formatted(listened);
      default -> "NOT CLEAN: something happened within %s.".formatted(listened);
    };
  }

  private void addDelay(Sheet sheet, ShownDelay delay) {
    sheet.row("delay", soak.told(delay));
    if (comparison.isPresent()) {
      sheet.row("verdict", Verdicts.line(delay, soak.isUncalibrated(), false, comparison));
      sheet.row("budget", Figures.predicted(comparison.get(), delay));
    }
    hostCheck.flatMap(HostCheckRecord::text).ifPresent(text -> sheet.row("host check", text));
  }
}
