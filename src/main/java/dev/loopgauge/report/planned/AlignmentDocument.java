package dev.loopgauge.report.planned;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.plan.AlignedMix;
import dev.loopgauge.plan.AlignedPath;
import dev.loopgauge.plan.Alignment;
import dev.loopgauge.plan.Conflict;
import dev.loopgauge.report.budget.DelayKeys;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.signal.Latency;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What to add to each path of each mix.
 *
 * @param chain the chain
 * @param alignment what came of it
 * @param csvFile the file that the table was written to as well
 */
public record AlignmentDocument(Chain chain, Alignment alignment, Optional<String> csvFile)
    implements Document {
  private static final int DISTANCE_DECIMALS = 4;

  @Override
  public String text() {
    return new AlignmentText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("align", outcome());
    json.put("step", alignment.step().label());
    json.put("mixes", alignment.mixes().stream().map(this::mix).toList());
    json.put("conflicts", alignment.conflicts().stream().map(AlignmentDocument::conflict).toList());
    csvFile.ifPresent(file -> json.put("csvFile", file));
    return json;
  }

  /** Whether nothing stands against setting the delays as they are. */
  public boolean isGood() {
    return alignment.conflicts().isEmpty() && !alignment.passesLimit();
  }

  private String outcome() {
    if (isGood()) {
      return "aligned";
    }
    return alignment.conflicts().isEmpty() ? "over-limit" : "conflicting";
  }

  private Map<String, Object> mix(AlignedMix mix) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", mix.name());
    json.put("target", mix.target());
    json.put("widestGapSamples", DelayKeys.samples(mix.widestGap().samples()));
    DelayKeys.putHz(json, "firstNullHz", mix.firstNullHz());
    json.put("unknownCompensation", mix.unknown());
    json.put("paths", mix.paths().stream().map(this::path).toList());
    return json;
  }

  private Map<String, Object> path(AlignedPath path) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", path.path());
    DelayKeys.put(json, "delay", path.delay().delay());
    json.put("offsetMs", DelayKeys.ms(path.offset().ms()));
    DelayKeys.put(json, "add", path.add());
    json.put("addMetres", Numbers.rounded(metres(path.add()), DISTANCE_DECIMALS));
    json.put("addFeet", Numbers.rounded(feet(path.add()), DISTANCE_DECIMALS));
    json.put("leavesSamples", DelayKeys.samples(path.left().samples()));
    DelayKeys.putHz(json, "firstNullHz", path.firstNullHz());
    json.put("passesLimit", path.passesLimit());
    json.put("source", path.delay().source().label());
    return json;
  }

  private static Map<String, Object> conflict(Conflict conflict) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", conflict.path());
    json.put("mix", conflict.larger());
    json.put("addSamples", DelayKeys.samples(conflict.add().samples()));
    json.put("otherMix", conflict.smaller());
    json.put("otherAddSamples", DelayKeys.samples(conflict.otherAdd().samples()));
    return json;
  }

  /** A delay as metres of air. */
  double metres(Latency delay) {
    return delay.seconds() * Air.metresPerSecond(chain.airTemperatureC());
  }

  /** A delay as feet of air. */
  double feet(Latency delay) {
    return metres(delay) / Air.METRES_PER_FOOT;
  }
}
