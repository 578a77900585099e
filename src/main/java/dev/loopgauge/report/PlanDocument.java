package dev.loopgauge.report;

import dev.loopgauge.plan.Breach;
import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Setting;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The settings that keep every listener of a rig within limits.
 *
 * @param request what could be chosen from
 * @param plan what came of it
 */
public record PlanDocument(PlanRequest request, Plan plan) implements Document {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;
  private static final int PERCENT_DECIMALS = 2;

  @Override
  public String text() {
    return new PlanText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json =
        Document.head("plan", plan.choices().isEmpty() ? "nothing-fits" : "planned");
    json.put("choices", plan.choices().stream().map(this::choice).toList());
    json.put("limit", plan.limit().map(PlanDocument::limit).orElse(null));
    json.put("droppedOut", plan.droppedOut().stream().map(PlanDocument::setting).toList());
    return json;
  }

  /** What is known of the computer at a setting. */
  Optional<Load> load(Setting setting) {
    return Optional.ofNullable(request.loads().get(setting));
  }

  private static Map<String, Object> setting(Setting setting) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", setting.blockSize());
    json.put("sampleRateHz", setting.rate().hertz());
    return json;
  }

  private Map<String, Object> choice(Choice choice) {
    Map<String, Object> json = setting(choice.setting());
    json.put("blockMs", Numbers.rounded(choice.setting().blockMs(), MS_DECIMALS));
    json.put("pictureApartMs", Numbers.rounded(choice.pictureApartMs(), MS_DECIMALS));
    load(choice.setting()).ifPresent(load -> putLoad(json, load));
    json.put("beforeHost", choice.beforeHost());
    json.put("paths", choice.feeds().stream().map(PlanDocument::feed).toList());
    return json;
  }

  private static void putLoad(Map<String, Object> json, Load load) {
    load.cpuPercent()
        .ifPresent(cpu -> json.put("cpuPercent", Numbers.rounded(cpu, PERCENT_DECIMALS)));
    load.dropouts().ifPresent(dropouts -> json.put("dropouts", dropouts));
  }

  private static Map<String, Object> feed(Feed feed) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", feed.path());
    json.put("routing", feed.routing().label());
    json.put("delaySamples", Numbers.rounded(feed.delay().delay().samples(), SAMPLE_DECIMALS));
    json.put("delayMs", Numbers.rounded(feed.delay().delay().ms(), MS_DECIMALS));
    json.put(
        "marginMs",
        feed.marginMs().isPresent()
            ? Numbers.rounded(feed.marginMs().getAsDouble(), MS_DECIMALS)
            : null);
    json.put("source", feed.delay().source().label());
    feed.picture().ifPresent(match -> json.put("picture", Pictures.json(match)));
    return json;
  }

  private static Map<String, Object> limit(Breach breach) {
    Map<String, Object> json = setting(breach.setting());
    json.put("path", breach.path());
    json.put("kind", breach.kind().label());
    json.put("reachedMs", Numbers.rounded(breach.reachedMs(), MS_DECIMALS));
    json.put("limitMs", Numbers.rounded(breach.limitMs(), MS_DECIMALS));
    json.put("overMs", Numbers.rounded(breach.overMs(), MS_DECIMALS));
    json.put("rule", breach.rule());
    return json;
  }
}
