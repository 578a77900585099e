package dev.loopgauge.verify;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Finds the block size at which causes that fit one reading alike would read apart. */
final class TellingApart {
  /** Nobody follows more. */
  private static final int MOST_TOLD = 4;

  private final List<Hypothesis> causes;
  private final SampleRate rate;
  private final double resolvedSamples;

  /**
   * The question for some causes, the likeliest first.
   *
   * @param rate the rate that readings count samples at
   * @param resolvedSamples how far apart two readings must be to tell causes apart
   */
  TellingApart(List<Hypothesis> causes, SampleRate rate, double resolvedSamples) {
    this.causes = causes.subList(0, Math.min(causes.size(), MOST_TOLD));
    this.rate = rate;
    this.resolvedSamples = resolvedSamples;
  }

  /** What to measure; empty where there are not two causes to tell apart. */
  Optional<ExtraMeasurement> measurement() {
    if (causes.size() < 2) {
      return Optional.empty();
    }
    Chain stated = causes.get(0).stated();
    int best = stated.blockSize();
    int mostGroups = 1;
    for (int size : nearestFirst(stated.blockSize())) {
      int groups = groups(size).size();
      if (groups > mostGroups) {
        best = size;
        mostGroups = groups;
      }
    }
    return Optional.of(mostGroups > 1 ? atBlockSize(best) : partOfTheWay(stated));
  }

  /** Powers of two before the others, since more hosts offer them; of two as near, the larger. */
  private static List<Integer> nearestFirst(int blockSize) {
    return BlockSizes.USUAL.stream()
        .filter(size -> size != blockSize)
        .sorted(
            Comparator.comparing((Integer size) -> Integer.bitCount(size) != 1)
                .thenComparing(
                    size -> (double) Math.max(size, blockSize) / Math.min(size, blockSize))
                .thenComparing(Comparator.reverseOrder()))
        .toList();
  }

  /** The causes that would read alike at a block size, by what they read. */
  private List<List<Hypothesis>> groups(int blockSize) {
    List<List<Hypothesis>> groups = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (Hypothesis cause :
        causes.stream().sorted(Comparator.comparingDouble(c -> read(c, blockSize))).toList()) {
      if (read(cause, blockSize) - last > resolvedSamples) {
        groups.add(new ArrayList<>());
      }
      groups.get(groups.size() - 1).add(cause);
      last = read(cause, blockSize);
    }
    return groups;
  }

  private double read(Hypothesis cause, int blockSize) {
    return cause.predictedSamples(rate, blockSize);
  }

  private ExtraMeasurement atBlockSize(int size) {
    List<String> readings = new ArrayList<>();
    for (List<Hypothesis> group : groups(size)) {
      String samples = PlainNumber.of(read(group.get(0), size), 1);
      String changes = String.join(" or ", group.stream().map(Hypothesis::written).toList());
      readings.add(samples + " samples means " + changes);
    }
    return measurement(
        OptionalInt.of(size),
        size,
        String.format(
            Locale.ROOT,
            "set the host to a block of %d and measure again. %s.",
            size,
            String.join("; ", readings)));
  }

  private ExtraMeasurement partOfTheWay(Chain stated) {
    String half =
        firstChangedStage(stated)
            .map(stage -> ", or measure with the return patched right behind '" + stage + "'")
            .orElse("");
    return measurement(
        OptionalInt.empty(),
        stated.blockSize(),
        "check each of these causes at the rig" + half + ". No other block size tells them apart.");
  }

  /** The first stage of the loop that only some of the causes change. */
  private Optional<String> firstChangedStage(Chain stated) {
    return ChainBudget.of(stated, stated.paths().values().iterator().next()).loopStages().stream()
        .map(StageDelay::name)
        .filter(stage -> changing(stage) > 0 && changing(stage) < causes.size())
        .findFirst();
  }

  private long changing(String stage) {
    return causes.stream()
        .filter(
            cause ->
                cause.changes().stream()
                    .anyMatch(c -> c instanceof StageChange s && s.stage().equals(stage)))
        .count();
  }

  private ExtraMeasurement measurement(OptionalInt blockSize, int size, String text) {
    return new ExtraMeasurement(
        blockSize,
        causes.stream().map(c -> new ExtraMeasurement.Outcome(c.written(), read(c, size))).toList(),
        OptionalDouble.empty(),
        text);
  }
}
