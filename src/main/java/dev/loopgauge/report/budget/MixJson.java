package dev.loopgauge.report.budget;

import dev.loopgauge.plan.MixArrival;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.MixOutcome;
import dev.loopgauge.plan.MixPair;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Paths that are heard together, as keys of a document. */
final class MixJson {
  private MixJson() {}

  static Map<String, Object> of(MixBudget mix) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", mix.name());
    json.put("paths", mix.arrivals().stream().map(MixJson::arrival).toList());
    json.put("pairs", mix.pairs().stream().map(MixJson::pair).toList());
    return json;
  }

  private static Map<String, Object> arrival(MixArrival arrival) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", arrival.path().name());
    DelayKeys.put(json, "addedByDesk", arrival.added());
    DelayKeys.put(json, "delay", arrival.delay());
    json.put("standing", arrival.standing().label());
    if (!arrival.added().equals(arrival.addedIfAll())) {
      DelayKeys.put(json, "delayIfAllCompensated", arrival.delayIfAll());
      json.put("standingIfAllCompensated", arrival.standingIfAll().label());
    }
    return json;
  }

  private static Map<String, Object> pair(MixPair pair) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("paths", List.of(pair.first().path(), pair.second().path()));
    json.put("toleranceSamples", DelayKeys.samples(pair.toleranceSamples()));
    json.put("unknownStages", pair.unknown());
    json.put("outcomes", pair.outcomes().stream().map(MixJson::outcome).toList());
    return json;
  }

  private static Map<String, Object> outcome(MixOutcome outcome) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("compensated", outcome.compensated());
    DelayKeys.put(json, "secondLater", outcome.secondLater());
    DelayKeys.put(json, "loopSecondLater", outcome.loopSecondLater());
    Combs.put(json, outcome.overlap());
    return json;
  }
}
