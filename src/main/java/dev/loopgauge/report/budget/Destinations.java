package dev.loopgauge.report.budget;

import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.plan.SharedInput;
import dev.loopgauge.plan.SharedInput.Destination;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Where one input goes, side by side, in words and for scripts. */
final class Destinations {
  private static final int MS_DECIMALS = 3;

  private Destinations() {}

  /** Tells how much later each is than the fastest, and which stages make it so. */
  static void tell(SharedInput input, Sheet sheet) {
    String fastest = Numbers.plain(input.fastest().delay().ms(), MS_DECIMALS);
    sheet.line(
        "Input "
            + (input.input() + ": " + input.fastest().name() + " is the fastest, ")
            + (fastest + " ms. Later are:"));
    for (Destination destination : input.others()) {
      sheet.row(
          "+" + Numbers.plain(destination.later().ms(), MS_DECIMALS) + " ms",
          destination.path().name() + ": " + because(destination));
    }
    sheet.gap();
  }

  private static String because(Destination destination) {
    List<String> parts = new ArrayList<>();
    destination.stages().added().forEach(stage -> parts.add(part(stage, "+")));
    destination.stages().spared().forEach(stage -> parts.add(part(stage, "-")));
    return parts.isEmpty() ? "the same stages" : String.join(", ", parts);
  }

  private static String part(StageDelay stage, String sign) {
    return stage.name() + " " + sign + Numbers.plain(stage.delay().ms(), MS_DECIMALS);
  }

  /** The input as keys of a document. */
  static Map<String, Object> json(SharedInput input) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("input", input.input());
    json.put("fastest", input.fastest().name());
    json.put("later", input.others().stream().map(Destinations::json).toList());
    return json;
  }

  private static Map<String, Object> json(Destination destination) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", destination.path().name());
    DelayKeys.put(json, "later", destination.later());
    json.put("added", destination.stages().added().stream().map(Destinations::json).toList());
    json.put("spared", destination.stages().spared().stream().map(Destinations::json).toList());
    return json;
  }

  /** A stage as keys of a document. */
  static Map<String, Object> json(StageDelay stage) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", stage.name());
    DelayKeys.put(json, "delay", stage.delay());
    return json;
  }
}
