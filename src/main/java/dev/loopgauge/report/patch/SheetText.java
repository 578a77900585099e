package dev.loopgauge.report.patch;

import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A patch sheet for the screen or for paper: a box to tick in each line.
 *
 * @param chain the rig's name
 * @param sends what was heard; empty while nobody has listened
 */
record SheetText(
    String chain,
    List<SheetRecord> sheet,
    List<String> withoutPatch,
    List<SendRecord> sends,
    List<Integer> crossedReturns,
    List<String> incidents,
    List<TroubleRecord> troubles) {
  /** A line: a path, or a reference. */
  private record Line(String name, String listener, PairRecord pair, String against) {}

  String text() {
    Sheet text = new Sheet().line(verdict());
    table().tell(lines(), text);
    for (TroubleRecord trouble : troubles) {
      text.row("wrong", trouble.text()).row("try", trouble.hint());
    }
    if (!withoutPatch.isEmpty()) {
      text.row("no patch", String.join(", ", withoutPatch));
    }
    incidents.forEach(incident -> text.row("lost", incident + "; check again"));
    if (sends.isEmpty()) {
      text.row("next", "--profile or --backend ticks it off with quiet ticks");
    }
    return text.toString();
  }

  private String verdict() {
    String paths = sheet.size() == 1 ? "1 path" : sheet.size() + " paths";
    if (troubles.isEmpty()) {
      return sends.isEmpty()
          ? "PATCH SHEET of " + OneLine.line(chain) + ": " + paths + "."
          : "PATCHED: " + paths + (sheet.size() == 1 ? " is" : " are") + " as the sheet says.";
    }
    int more = troubles.size() - 1;
    return "NOT PATCHED: "
        + troubles.get(0).text()
        + (more == 0 ? "." : "; and " + more + " more.");
  }

  private Table<Line> table() {
    return new Table<Line>()
        .words("", this::tick)
        .words("path", Line::name)
        .words("heard by", Line::listener)
        .figures("send", line -> String.valueOf(line.pair().send()))
        .figures("return", line -> String.valueOf(line.pair().ret()))
        .figures("against", Line::against)
        .words("", this::heard);
  }

  /** The references first, then the paths. */
  private List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    sheet.stream()
        .flatMap(line -> line.reference().stream())
        .distinct()
        .filter(pair -> sheet.stream().noneMatch(line -> line.pair().equals(pair)))
        .forEach(pair -> lines.add(new Line("reference", "", pair, "")));
    for (SheetRecord line : sheet) {
      lines.add(
          new Line(
              OneLine.line(line.path()),
              line.listener(),
              line.pair(),
              line.reference().map(pair -> String.valueOf(pair.ret())).orElse("-")));
    }
    return lines;
  }

  private String tick(Line line) {
    if (sends.isEmpty()) {
      return "[ ]";
    }
    return isCrossed(line) || on(line).isEmpty() ? "[!]" : "[x]";
  }

  private String heard(Line line) {
    if (sends.isEmpty()) {
      return "";
    }
    if (isCrossed(line)) {
      return "hears more than one send";
    }
    return on(line)
        .map(SendRecord.HeardRecord::level)
        .orElseGet(
            () ->
                of(line).isEmpty()
                    ? "not heard"
                    : "on return "
                        + of(line).stream()
                            .map(heard -> String.valueOf(heard.ret()))
                            .collect(Collectors.joining(", ")));
  }

  private boolean isCrossed(Line line) {
    return crossedReturns.contains(line.pair().ret());
  }

  private Optional<SendRecord.HeardRecord> on(Line line) {
    return of(line).stream().filter(heard -> heard.ret() == line.pair().ret()).findFirst();
  }

  private List<SendRecord.HeardRecord> of(Line line) {
    return sends.stream()
        .filter(send -> send.send() == line.pair().send())
        .flatMap(send -> send.heard().stream())
        .toList();
  }
}
