package dev.loopgauge.verify;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Host;
import dev.loopgauge.chain.HostChange;
import dev.loopgauge.chain.HostSettings;
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

  /**
   * How far off a stated distance is believed to be, as a part of it: common practice, no source.
   */
  private static final double BELIEVABLE = 1.0 / 3;

  private static final int MOST_BLOCKS_OFF = 2;

  private SingleChanges() {}

  /**
   * All but the distances: another block size or rate, a stage more, less or counted twice. Only
   * what the path itself passes can be so, and what its host reports elsewhere and may delay this
   * path to match.
   */
  static List<Change> of(Chain chain) {
    List<Change> changes = new ArrayList<>();
    BlockSizes.USUAL.stream()
        .filter(size -> size != chain.blockSize())
        .forEach(size -> changes.add(new RigChange.BlockSize(size)));
    RATES.stream()
        .filter(rate -> !rate.equals(chain.rate()))
        .forEach(rate -> changes.add(new RigChange.WordClock(rate)));
    List<Stage> loop = loop(chain);
    loop.stream()
        .flatMap(stage -> stage.host().stream())
        .distinct()
        .forEach(host -> changes.addAll(ofHost(chain.hosts().get(host), chain)));
    loop.forEach(stage -> changes.addAll(ofStage(stage)));
    boolean inHost = !Host.on(chain, path(chain)).inside().isEmpty();
    chain.stages().values().stream()
        .filter(stage -> stage.reportedBy().isPresent())
        .filter(stage -> inHost || loop.contains(stage))
        .filter(stage -> !(stage.delay() instanceof Delay.Frames))
        .forEach(stage -> changes.add(new StageChange.NotCompensated(stage.name())));
    return changes;
  }

  private static List<Change> ofHost(HostSettings host, Chain chain) {
    List<Change> changes = new ArrayList<>();
    int stated = host.blockSize().orElse(chain.blockSize());
    BlockSizes.USUAL.stream()
        .filter(size -> size != stated)
        .forEach(size -> changes.add(new HostChange.BlockSize(host.name(), size)));
    RATES.stream()
        .filter(rate -> !rate.equals(host.rate().orElse(chain.rate())))
        .forEach(rate -> changes.add(new HostChange.WordClock(host.name(), rate)));
    return changes;
  }

  /**
   * The distances that would make the loop so much later, one at a time, as far as they can be
   * believed: off by no more than a third of themselves.
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
        if (Math.abs(off) <= BELIEVABLE * metres) {
          changes.add(new StageChange.Distance(stage.name(), metres + off));
        }
      }
    }
    return changes;
  }

  private static List<Stage> loop(Chain chain) {
    return ChainBudget.of(chain, path(chain)).loopStages().stream()
        .map(StageDelay::name)
        .distinct()
        .map(chain.stages()::get)
        .toList();
  }

  private static ChainPath path(Chain chain) {
    return chain.paths().values().iterator().next();
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
