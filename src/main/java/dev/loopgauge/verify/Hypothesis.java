package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.Found;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * What may be different at the rig: changes of its chain, one after the other.
 *
 * @param stated the chain as it is stated, with the measured path alone
 * @param changes what is different; none says that nothing is
 * @param found the chain with these changes
 */
record Hypothesis(Chain stated, List<Change> changes, Chain found) {
  Hypothesis {
    changes = List.copyOf(changes);
  }

  /** That the rig is as stated. */
  static Hypothesis nothing(Chain stated) {
    return new Hypothesis(stated, List.of(), stated);
  }

  /** That this is different too. */
  Hypothesis and(Change change) {
    List<Change> more = new ArrayList<>(changes);
    more.add(change);
    return new Hypothesis(stated, more, change.on(found));
  }

  /** The loop's delay if it is so, in samples of {@code rate}. */
  double predictedSamples(SampleRate rate) {
    return predictedSamples(found, rate);
  }

  /** The loop's delay if it is so and the host is then set to another block size. */
  double predictedSamples(SampleRate rate, int blockSize) {
    return predictedSamples(found.withBlockSize(blockSize), rate);
  }

  private static double predictedSamples(Chain chain, SampleRate rate) {
    return budget(chain).loop().seconds() * rate.hertz();
  }

  /** How far off the loop's delay may be either way, in samples of {@code rate}. */
  double toleranceSamples(SampleRate rate) {
    return budget(found).loopToleranceSamples() * rate.hertz() / found.rate().hertz();
  }

  private static PathBudget budget(Chain chain) {
    return ChainBudget.of(chain, chain.paths().values().iterator().next());
  }

  /** The kinds of change, by the names that documents use, joined by +. */
  String cause() {
    return changes.stream().map(Change::cause).collect(Collectors.joining("+"));
  }

  /** The changes as the {@code --change} option takes them, joined by and. */
  String written() {
    return changes.stream().map(Change::written).collect(Collectors.joining(" and "));
  }

  /** What is different and what to check at the rig. */
  String text() {
    List<String> told = new ArrayList<>();
    Chain before = stated;
    for (Change change : changes) {
      told.add(told(change, before));
      before = change.on(before);
    }
    return String.join(", and ", told)
        + ". "
        + changes.stream().map(Change::check).distinct().collect(Collectors.joining(" "));
  }

  /** A delay that is reported for a stage elsewhere reaches this path only by way of the host. */
  private static String told(Change change, Chain before) {
    if (change instanceof StageChange.NotCompensated late
        && !before.paths().values().iterator().next().stages().contains(late.stage())) {
      return String.format(
          Locale.ROOT,
          "%s may delay this path to match '%s' (%s samples)",
          Found.in(before, late.stage()).reportedBy().orElse("the host"),
          late.stage(),
          Found.samples(late.stage(), before));
    }
    return change.told(before);
  }
}
