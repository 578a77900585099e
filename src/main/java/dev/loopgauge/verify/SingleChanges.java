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
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

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
    for (int size : BlockSizes.USUAL) {
      if (size != chain.blockSize()) {
        changes.add(new RigChange.BlockSize(size));
      }
    }
    for (SampleRate rate : RATES) {
      if (!rate.equals(chain.rate())) {
        changes.add(new RigChange.WordClock(rate));
      }
    }
    Map<String, Stage> loop = loop(chain);
    for (String host : hosts(loop.values())) {
      changes.addAll(ofHost(chain.hosts().get(host), chain));
    }
    for (Stage stage : loop.values()) {
      changes.addAll(ofStage(stage));
    }
    boolean inHost = !Host.on(chain, path(chain)).inside().isEmpty();
    for (Stage stage : chain.stages().values()) {
      if (stage.reportedBy().isPresent()
          && (inHost || loop.containsKey(stage.name()))
          && !(stage.delay() instanceof Delay.Frames)) {
        changes.add(new StageChange.NotCompensated(stage.name()));
      }
    }
    return changes;
  }

  private static Set<String> hosts(Collection<Stage> stages) {
    Set<String> hosts = new LinkedHashSet<>();
    for (Stage stage : stages) {
      if (stage.host().isPresent()) {
        hosts.add(stage.host().get());
      }
    }
    return hosts;
  }

  private static List<Change> ofHost(HostSettings host, Chain chain) {
    List<Change> changes = new ArrayList<>();
    int stated = host.blockSize().orElse(chain.blockSize());
    for (int size : BlockSizes.USUAL) {
      if (size != stated) {
        changes.add(new HostChange.BlockSize(host.name(), size));
      }
    }
    for (SampleRate rate : RATES) {
      if (!rate.equals(host.rate().orElse(chain.rate()))) {
        changes.add(new HostChange.WordClock(host.name(), rate));
      }
    }
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
    for (Stage stage : loop(chain).values()) {
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

  private static Map<String, Stage> loop(Chain chain) {
    Map<String, Stage> loop = new LinkedHashMap<>();
    for (StageDelay passed : ChainBudget.of(chain, path(chain)).loopStages()) {
      loop.put(passed.name(), chain.stages().get(passed.name()));
    }
    return loop;
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
