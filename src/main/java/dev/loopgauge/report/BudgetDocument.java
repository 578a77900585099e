package dev.loopgauge.report;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.plan.PictureRule;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How late the paths of a chain are predicted to be.
 *
 * @param chain the chain, at the rate and block size that were asked about
 * @param paths the budgets of its paths
 * @param withStages whether the text goes into the stages
 * @param rule what sound is judged by against its picture
 */
public record BudgetDocument(
    Chain chain, List<PathBudget> paths, boolean withStages, PictureRule rule) implements Document {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;
  private static final int DISTANCE_DECIMALS = 3;

  /** Copies the list. */
  public BudgetDocument {
    paths = List.copyOf(paths);
  }

  @Override
  public String text() {
    return new BudgetText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("budget", "predicted");
    json.put("paths", paths.stream().map(this::path).toList());
    return json;
  }

  private Map<String, Object> path(PathBudget path) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", path.name());
    json.put("listener", path.listener().label());
    json.put("delaySamples", Numbers.rounded(path.delay().samples(), SAMPLE_DECIMALS));
    json.put("delayMs", Numbers.rounded(path.delay().ms(), MS_DECIMALS));
    json.put("toleranceSamples", Numbers.rounded(path.toleranceSamples(), SAMPLE_DECIMALS));
    json.put("equivalentMetres", Numbers.rounded(path.equivalentMetres(), DISTANCE_DECIMALS));
    json.put("equivalentFeet", Numbers.rounded(path.equivalentFeet(), DISTANCE_DECIMALS));
    json.put("standing", path.standing().label());
    PictureBudget.of(chain, path, rule).ifPresent(picture -> json.put("picture", picture.json()));
    json.put("stages", path.stages().stream().map(BudgetDocument::stage).toList());
    return json;
  }

  private static Map<String, Object> stage(StageDelay stage) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", stage.name());
    json.put("delaySamples", Numbers.rounded(stage.delay().samples(), SAMPLE_DECIMALS));
    json.put("delayMs", Numbers.rounded(stage.delay().ms(), MS_DECIMALS));
    return json;
  }
}
