package dev.loopgauge.report.planned;

import dev.loopgauge.plan.Breach;
import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Routing;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.report.budget.DelayKeys;
import dev.loopgauge.report.budget.Pictures;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
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

  /** The block size that would bring the sound of a path closest to its picture. */
  Optional<PictureBlock> closest(Setting setting, Feed feed) {
    return feed.routing() == Routing.BEFORE_HOST
        ? Optional.empty()
        : PictureBlock.closest(
            request.chain().withSampleRate(setting.rate()),
            request.chain().path(feed.path()),
            request.delays(),
            request.rule(),
            request.blockSizes());
  }

  private static Map<String, Object> setting(Setting setting) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", setting.blockSize());
    json.put("sampleRateHz", setting.rate().hertz());
    return json;
  }

  private Map<String, Object> choice(Choice choice) {
    Map<String, Object> json = setting(choice.setting());
    json.put("blockMs", DelayKeys.ms(choice.setting().blockMs()));
    json.put("pictureApartMs", DelayKeys.ms(choice.pictureApartMs()));
    load(choice.setting()).ifPresent(load -> putLoad(json, load));
    json.put("beforeHost", choice.beforeHost());
    json.put("paths", choice.feeds().stream().map(feed -> feed(choice.setting(), feed)).toList());
    return json;
  }

  private static void putLoad(Map<String, Object> json, Load load) {
    load.cpuPercent()
        .ifPresent(cpu -> json.put("cpuPercent", Numbers.rounded(cpu, PERCENT_DECIMALS)));
    load.dropouts().ifPresent(dropouts -> json.put("dropouts", dropouts));
  }

  private Map<String, Object> feed(Setting setting, Feed feed) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", feed.path());
    json.put("routing", feed.routing().label());
    DelayKeys.put(json, "delay", feed.delay().delay());
    json.put(
        "marginMs",
        feed.marginMs().isPresent() ? DelayKeys.ms(feed.marginMs().getAsDouble()) : null);
    json.put("source", feed.delay().source().label());
    feed.picture().ifPresent(match -> json.put("picture", picture(setting, feed, match)));
    return json;
  }

  private Map<String, Object> picture(Setting setting, Feed feed, PictureMatch match) {
    Map<String, Object> json = Pictures.json(match);
    closest(setting, feed).ifPresent(block -> json.put("closestBlock", Pictures.json(block)));
    return json;
  }

  private static Map<String, Object> limit(Breach breach) {
    Map<String, Object> json = setting(breach.setting());
    json.put("path", breach.path());
    json.put("kind", breach.kind().label());
    json.put("reachedMs", DelayKeys.ms(breach.reachedMs()));
    json.put("limitMs", DelayKeys.ms(breach.limitMs()));
    json.put("overMs", DelayKeys.ms(breach.overMs()));
    json.put("rule", breach.rule());
    return json;
  }
}
