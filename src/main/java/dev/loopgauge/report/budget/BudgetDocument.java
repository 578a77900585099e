package dev.loopgauge.report.budget;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.PathDelays;
import dev.loopgauge.plan.PictureBlocks;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.plan.SharedInput;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How late the paths of a chain are predicted to be.
 *
 * @param chain the chain's name
 * @param sampleRateHz the rate that was asked about
 * @param blockSize the block size that was asked about; null where no stage counts blocks
 * @param airTemperature in degrees Celsius
 * @param hosts the computers that run apart from the rest of the rig
 * @param paths the budgets of its paths
 * @param inputs the inputs that go to several of these paths
 * @param mixes the mixes that bring these paths together with any other
 * @param changes what is different from the chain file, in words
 * @param before the same paths without these changes
 * @param notes what in the chain file may be a mistake, one sentence each
 */
public record BudgetDocument(
    String command,
    String outcome,
    Optional<String> chain,
    Optional<Integer> sampleRateHz,
    Optional<Integer> blockSize,
    Optional<BigDecimal> airTemperature,
    List<HostRecord> hosts,
    List<PathRecord> paths,
    List<InputRecord> inputs,
    List<MixRecord> mixes,
    List<String> changes,
    List<PathRecord> before,
    List<String> notes)
    implements Document, Sparse {
  private static final int TEMPERATURE_DECIMALS = 2;

  /** A budget with another text. */
  private record Told(BudgetDocument budget, String text) implements Document {

    @Override
    public Map<String, Object> json() {
      return budget.json();
    }
  }

  /**
   * The document of a chain.
   *
   * @param chain the chain, at the rate and block size that were asked about
   * @param paths the budgets of its paths
   * @param rule what sound is judged by against its picture
   */
  public static BudgetDocument of(Chain chain, List<PathBudget> paths, PictureRule rule) {
    PictureBlocks blocks = PictureBlocks.of(chain, PathDelays.predicted(), rule, BlockSizes.USUAL);
    return new BudgetDocument(
        "budget",
        "predicted",
        Optional.of(chain.name()),
        Optional.of(chain.rate().hertz()),
        chain.countsBlocks() ? Optional.of(chain.blockSize()) : Optional.empty(),
        Optional.of(Numbers.rounded(chain.airTemperatureC(), TEMPERATURE_DECIMALS)),
        HostRecord.all(chain),
        paths(chain, paths, rule, blocks),
        InputRecord.of(SharedInput.among(chain, paths)),
        mixes(chain, paths),
        List.of(),
        List.of(),
        List.of());
  }

  private static List<PathRecord> paths(
      Chain chain, List<PathBudget> paths, PictureRule rule, PictureBlocks blocks) {
    List<PathRecord> records = new ArrayList<>();
    for (PathBudget path : paths) {
      records.add(PathRecord.of(chain, path, rule, blocks));
    }
    return records;
  }

  private static List<MixRecord> mixes(Chain chain, List<PathBudget> paths) {
    Set<String> names = new HashSet<>();
    for (PathBudget path : paths) {
      names.add(path.name());
    }
    List<MixRecord> mixes = new ArrayList<>();
    for (Mix mix : chain.mixes().values()) {
      MixBudget budget = MixBudget.of(chain, mix).among(names);
      if (budget.arrivals().size() > 1) {
        mixes.add(MixRecord.of(budget));
      }
    }
    return mixes;
  }

  /**
   * This budget as what came of changes.
   *
   * @param told what is different, in words
   * @param unchanged the budgets of the same paths as stated
   * @throws IllegalArgumentException when the paths differ
   */
  public BudgetDocument after(List<String> told, BudgetDocument unchanged) {
    if (!names(unchanged.paths).equals(names(paths))) {
      throw new IllegalArgumentException(
          "the same paths must stand before and after, not "
              + names(unchanged.paths)
              + names(paths));
    }
    return new BudgetDocument(
        command,
        outcome,
        chain,
        sampleRateHz,
        blockSize,
        airTemperature,
        hosts,
        paths,
        inputs,
        mixes,
        List.copyOf(told),
        unchanged.paths,
        notes);
  }

  /** The same with what in the chain file may be a mistake. */
  public BudgetDocument noting(List<String> mistakes) {
    return new BudgetDocument(
        command,
        outcome,
        chain,
        sampleRateHz,
        blockSize,
        airTemperature,
        hosts,
        paths,
        inputs,
        mixes,
        changes,
        before,
        List.copyOf(mistakes));
  }

  /** Whether a path is too late for its listener, or too far from its picture. */
  public boolean isOver() {
    for (PathRecord path : paths) {
      if (path.standing().orElse(null) == Standing.OVER) {
        return true;
      }
    }
    return false;
  }

  private static List<String> names(List<PathRecord> paths) {
    return paths.stream().map(PathRecord::name).toList();
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("changes", "before", "notes");
  }

  /** The same with a text that goes into the stages. */
  public Document inStages() {
    return new Told(this, BudgetText.inStages(this));
  }

  /** The same with a text that leaves nothing out and tells no two rows as one. */
  public Document inFull() {
    return new Told(this, BudgetText.full(this));
  }

  @Override
  public String text() {
    return BudgetText.brief(this);
  }
}
