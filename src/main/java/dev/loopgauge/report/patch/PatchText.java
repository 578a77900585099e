package dev.loopgauge.report.patch;

import dev.loopgauge.report.form.Sheet;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A check of sends and returns for the screen.
 *
 * @param good whether it can be measured by
 */
record PatchText(
    boolean good,
    List<PairRecord> asked,
    List<SendRecord> sends,
    List<Integer> silentReturns,
    List<Integer> crossedReturns,
    List<String> incidents,
    List<TroubleRecord> troubles) {
  String text() {
    Sheet sheet = new Sheet().line(verdict());
    sends.forEach(send -> tell(sheet, send));
    if (!silentReturns.isEmpty()) {
      sheet.row("silent", "return " + list(silentReturns));
    }
    for (int ret : crossedReturns) {
      sheet.row("crossed", "return " + ret + " hears more than one send: is it patched twice?");
    }
    incidents.forEach(incident -> sheet.row("lost", incident + "; check again"));
    troubles.stream().map(TroubleRecord::hint).distinct().forEach(hint -> sheet.row("try", hint));
    if (good && asked.size() == 1) {
      sheet.row("reference", "none asked for: without one the card's own delay is measured too");
    }
    return sheet.row("note", "the times include the sound card's own delay").toString();
  }

  private String verdict() {
    boolean said = !asked.isEmpty();
    List<Integer> unheard = unheard();
    if (good) {
      return said ? "PATCHED as asked." : "HEARD: each send comes back.";
    }
    if (!said && !unheard.isEmpty()) {
      return "NOT HEARD: send " + list(unheard) + ".";
    }
    return (said ? "NOT PATCHED as asked" : "NOT PATCHED")
        + troubles.stream()
            .map(TroubleRecord::text)
            .collect(Collectors.joining("; ", troubles.isEmpty() ? "" : ": ", "."));
  }

  private List<Integer> unheard() {
    return sends.stream().filter(send -> send.heard().isEmpty()).map(SendRecord::send).toList();
  }

  private static void tell(Sheet sheet, SendRecord send) {
    String label = "send " + send.send();
    if (send.heard().isEmpty()) {
      sheet.row(label, "not heard");
    }
    send.heard().forEach(one -> sheet.row(label, one.told()));
  }

  private static String list(List<Integer> channels) {
    return channels.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
