package dev.loopgauge.report.planned;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The plan as text: the choice first, then what limits it, then the other choices. */
final class PlanText {
  /** How many choices are shown. */
  private static final int MOST_ROWS = 12;

  private final Sheet sheet = new Sheet();
  private final PlanDocument document;

  private PlanText(PlanDocument document) {
    this.document = document;
  }

  /** The text. */
  static String of(PlanDocument document) {
    PlanText text = new PlanText(document);
    if (document.choices().isEmpty()) {
      text.nothingFits();
    } else {
      text.choice(document.choices().get(0));
      text.sheet.gap();
      text.table();
      text.more();
    }
    text.droppedOut();
    return text.sheet.toString();
  }

  private void nothingFits() {
    sheet.line("NOTHING FITS: no setting keeps every listener within limits.");
    document
        .limit()
        .ifPresent(
            breach -> {
              String at = new SettingRecord(breach.blockSize(), breach.sampleRateHz()).told();
              sheet.row("nearest", at + ": " + breach.told());
              breach.rule().ifPresent(rule -> sheet.row("rule", rule));
              breach.hint().ifPresent(hint -> sheet.row("try", hint));
            });
  }

  private void choice(ChoiceRecord choice) {
    sheet.line("CHOOSE " + choice.told() + ": every listener is within limits.");
    document
        .sameClock()
        .ifPresent(
            setting ->
                sheet.row(
                    "same clock",
                    setting.told() + " is the best that leaves the sample rate alone"));
    document.limit().ifPresent(this::oneStepUp);
    document.noLimit().ifPresent(why -> sheet.row("one step up", why));
    routings(choice);
    choice.paths().forEach(this::picture);
    String measured = named(choice.paths().stream().filter(SettingPathRecord::isMeasured).toList());
    sheet.row("measured", measured.isEmpty() ? "nothing; all is predicted" : measured);
  }

  private void oneStepUp(BreachRecord breach) {
    sheet.row("one step up", "block " + breach.blockSize() + ": " + breach.told());
    breach.rule().ifPresent(rule -> sheet.row("rule", rule));
  }

  private static String named(List<SettingPathRecord> paths) {
    return paths.stream().map(SettingPathRecord::path).collect(Collectors.joining(", "));
  }

  private void routings(ChoiceRecord choice) {
    String moved =
        choice.paths().stream()
            .filter(SettingPathRecord::isMoved)
            .map(path -> path.path() + " (then " + plain(path.delayMs(), 1) + " ms)")
            .collect(Collectors.joining(", "));
    if (!moved.isEmpty()) {
      sheet.row("re-patch", "from before the host, by a second patch of the input: " + moved);
    }
  }

  private void picture(SettingPathRecord path) {
    path.picture()
        .ifPresent(
            picture -> {
              String told = path.path() + ": " + picture.told();
              sheet.row("picture", told + "; " + picture.advice());
              picture.closest().ifPresent(block -> sheet.row("", block));
            });
  }

  /** The best choices, one line each; columns about which nothing is known are left out. */
  private void table() {
    List<ChoiceRecord> choices = document.choices();
    Table<ChoiceRecord> table =
        new Table<ChoiceRecord>()
            .figures("block", choice -> String.valueOf(choice.blockSize()))
            .figures("kHz", choice -> SettingRecord.kilohertz(choice.sampleRateHz()))
            .figures("ms a block", choice -> plain(choice.blockMs(), 2));
    if (choices.stream().anyMatch(choice -> choice.cpuPercent().isPresent())) {
      table.figures("CPU %", choice -> plain(choice.cpuPercent(), 1));
    }
    table
        .figures(
            "spare ms", choice -> plain(choice.tightest().flatMap(SettingPathRecord::marginMs), 1))
        .words("on", choice -> choice.tightest().map(SettingPathRecord::path).orElse("-"));
    if (choices.stream().anyMatch(ChoiceRecord::hasPicture)) {
      table.figures("off picture", choice -> plain(choice.pictureApartMs(), 1));
    }
    table.figures("re-patched", choice -> String.valueOf(choice.beforeHost().size()));
    table.lines(choices.subList(0, Math.min(MOST_ROWS, choices.size()))).forEach(sheet::asIs);
  }

  private void more() {
    int hidden = document.choices().size() - MOST_ROWS;
    if (hidden > 0) {
      sheet.line("  and " + hidden + " more; --json lists all");
    }
  }

  private void droppedOut() {
    if (!document.droppedOut().isEmpty()) {
      sheet.row(
          "left out",
          document.droppedOut().stream().map(SettingRecord::told).collect(Collectors.joining(", "))
              + ": sound dropped out there when it was measured");
    }
  }

  private static String plain(Optional<BigDecimal> number, int decimals) {
    return number.map(known -> Numbers.plain(known.doubleValue(), decimals)).orElse("-");
  }
}
