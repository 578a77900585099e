package dev.loopgauge.verify;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The single changes that a chain with one path allows on the loop of that path. */
final class SingleChanges {
  /** 48, 44.1 and 96 kHz by AES5 (from memory); the others are their usual multiples. */
  static final List<SampleRate> RATES =
      List.of(
          new SampleRate(44_100),
          new SampleRate(48_000),
          new SampleRate(88_200),
          new SampleRate(96_000),
          new SampleRate(176_400),
          new SampleRate(192_000));

  /** How far off a stated distance is believed to be, in metres, even where it is short. */
  private static final double BELIEVABLE_METRES = 3;

  private static final int MOST_BLOCKS_OFF = 2;

  private SingleChanges() {}

  /** All but the distances: another block size or rate, a stage more, less or counted twice. */
  static List<Change> of(Chain chain) {
    List<Change> changes = new ArrayList<>();
    BlockSizes.USUAL.stream()
        .filter(size -> size != chain.blockSize())
        .forEach(size -> changes.add(new RigChange.BlockSize(size)));
    RATES.stream()
        .filter(rate -> !rate.equals(chain.rate()))
        .forEach(rate -> changes.add(new RigChange.WordClock(rate)));
    loop(chain).forEach(stage -> changes.addAll(ofStage(stage)));
    chain.stages().values().stream()
        .filter(stage -> stage.reportedBy().isPresent())
        .filter(stage -> !(stage.delay() instanceof Delay.Frames))
        .forEach(stage -> changes.add(new StageChange.NotCompensated(stage.name())));
    return changes;
  }

  /**
   * The distances that would make the loop so much later, one at a time, as far as they can be
   * believed: off by no more than themselves, or by {@value #BELIEVABLE_METRES} m.
   *
   * @param missingSeconds how much later the loop is than predicted
   */
  static List<Change> distances(Chain chain, double missingSeconds) {
    double off = missingSeconds * Air.metresPerSecond(chain.airTemperatureC());
    List<Change> changes = new ArrayList<>();
    for (Stage stage : loop(chain)) {
      OptionalDouble stated = stage.delay().airMetres();
      if (stated.isPresent()) {
        double metres = stated.getAsDouble();
        if (metres + off >= 0 && Math.abs(off) <= Math.max(BELIEVABLE_METRES, metres)) {
          changes.add(new StageChange.Distance(stage.name(), metres + off));
        }
      }
    }
    return changes;
  }

  private static List<Stage> loop(Chain chain) {
    ChainPath path = chain.paths().values().iterator().next();
    return ChainBudget.of(chain, path).loopStages().stream()
        .map(StageDelay::name)
        .distinct()
        .map(chain.stages()::get)
        .toList();
  }

  private static List<Change> ofStage(Stage stage) {
    List<Change> changes = new ArrayList<>();
    if (stage.delay() instanceof Delay.Blocks blocks) {
      for (int more = 1; more <= MOST_BLOCKS_OFF; more++) {
        changes.add(new StageChange.HostBlocks(stage.name(), more));
        if (blocks.count() >= more) {
          changes.add(new StageChange.HostBlocks(stage.name(), -more));
        }
      }
    }
    if (!stage.delay().isAir()) {
      changes.add(new StageChange.Absent(stage.name()));
      changes.add(new StageChange.Twice(stage.name()));
    }
    return changes;
  }
}
