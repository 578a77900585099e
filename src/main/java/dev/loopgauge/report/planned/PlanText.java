package dev.loopgauge.report.planned;

import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The plan as text: the choice first, then what limits it, then the other choices. */
final class PlanText {
  /** How many choices are shown. */
  private static final int MOST_ROWS = 12;

  private static final int MOST_PICTURES = 6;

  /** How many paths of one input are named one by one. */
  private static final int MOST_FED = 4;

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
    doublePatches(choice);
    pictures(choice);
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

  /** Which inputs get a second patch, before the host, and for whom. */
  private void doublePatches(ChoiceRecord choice) {
    Map<String, SettingPathRecord> paths = new HashMap<>();
    choice.paths().forEach(path -> paths.put(path.path(), path));
    choice
        .doublePatches()
        .forEach(
            patch -> {
              List<SettingPathRecord> fed =
                  patch.paths().stream().filter(paths::containsKey).map(paths::get).toList();
              String each =
                  Excerpt.of(false).of(fed, MOST_FED, SettingPathRecord::delayMs).shown().stream()
                      .map(PlanText::fed)
                      .collect(Collectors.joining(", "));
              sheet.row(
                  "patch twice",
                  "input " + patch.input() + ", once more before the host, for " + each);
            });
  }

  private static String fed(Alike<SettingPathRecord> paths) {
    return paths.names(SettingPathRecord::path)
        + (" (then " + plain(paths.first().delayMs(), 1) + " ms)");
  }

  private void pictures(ChoiceRecord choice) {
    List<SettingPathRecord> seen =
        choice.paths().stream().filter(path -> path.picture().isPresent()).toList();
    Excerpt.Part<SettingPathRecord> part =
        Excerpt.of(false).of(seen, MOST_PICTURES, path -> path.picture().orElseThrow());
    part.shown()
        .forEach(
            row ->
                row.first()
                    .picture()
                    .ifPresent(
                        picture -> {
                          String told = row.names(SettingPathRecord::path) + ": " + picture.told();
                          sheet.row("picture", told + "; " + picture.advice());
                          picture.closest().ifPresent(block -> sheet.row("", block));
                        }));
    if (part.hidden() > 0) {
      sheet.row("picture", part.hidden() + " paths more; --json lists all");
    }
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
    table.figures("patch twice", choice -> String.valueOf(choice.doublePatches().size()));
    table.tell(choices.subList(0, Math.min(MOST_ROWS, choices.size())), sheet);
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
