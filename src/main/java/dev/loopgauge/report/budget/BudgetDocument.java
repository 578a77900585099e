package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.plan.SharedInput;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

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
    json.put("inputs", inputs().stream().map(Destinations::json).toList());
    json.put("mixes", mixes().stream().map(MixJson::of).toList());
    return json;
  }

  /** The inputs that go to several of these paths. */
  List<SharedInput> inputs() {
    return SharedInput.among(chain, paths);
  }

  /** The mixes that bring these paths together with any other. */
  List<MixBudget> mixes() {
    Set<String> names = paths.stream().map(PathBudget::name).collect(Collectors.toSet());
    return chain.mixes().values().stream()
        .map(mix -> MixBudget.of(chain, mix).among(names))
        .filter(mix -> !mix.pairs().isEmpty())
        .toList();
  }

  private Map<String, Object> path(PathBudget path) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", path.name());
    json.put("listener", path.listener().label());
    DelayKeys.put(json, "delay", path.delay());
    json.put("toleranceSamples", DelayKeys.samples(path.toleranceSamples()));
    json.put("equivalentMetres", Numbers.rounded(path.equivalentMetres(), DISTANCE_DECIMALS));
    json.put("equivalentFeet", Numbers.rounded(path.equivalentFeet(), DISTANCE_DECIMALS));
    json.put("standing", path.standing().label());
    json.put("cautionMs", ms(path.limits().cautionMs()));
    json.put("limitMs", ms(path.limits().limitMs()));
    json.put("limitSource", path.limits().rule());
    NotesJson.put(json, PathNotes.of(chain, path));
    PictureBudget.of(chain, path, rule).ifPresent(picture -> json.put("picture", picture.json()));
    json.put("stages", path.stages().stream().map(Destinations::json).toList());
    return json;
  }

  private static BigDecimal ms(OptionalDouble ms) {
    return ms.isPresent() ? DelayKeys.ms(ms.getAsDouble()) : null;
  }
}
