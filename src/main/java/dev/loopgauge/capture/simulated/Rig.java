package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.StageChange;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What stands between send 2 and return 2, as the faults leave it.
 *
 * @param loop how late it is, at the session's rate
 * @param blockSize one block of its host, in samples of the session's rate
 * @param heard what it does to the sound besides, in this order
 * @param failing how the card's takes fail, where they do
 */
record Rig(Latency loop, int blockSize, List<SoundFault> heard, Optional<CardFault> failing) {
  Rig {
    heard = List.copyOf(heard);
  }

  /**
   * The rig that a path of a chain describes, with its faults.
   *
   * @param rate the session's rate; the whole rig runs at it unless a fault says otherwise
   * @throws FaultFormatException when a fault names a stage that the path's loop hasn't
   */
  static Rig of(Chain chain, ChainPath path, List<Fault> faults, SampleRate rate) {
    Chain found = chain.withSampleRate(rate).only(path);
    for (ChainFault fault : only(ChainFault.class, faults).toList()) {
      found = changed(found, fault.change());
    }
    double seconds = ChainBudget.of(found, onlyPath(found)).loop().seconds();
    return new Rig(
        Latency.ofSeconds(seconds, rate),
        rate.samplesIn((double) found.blockSize() / found.rate().hertz()),
        only(SoundFault.class, faults).toList(),
        only(CardFault.class, faults).findFirst());
  }

  private static ChainPath onlyPath(Chain chain) {
    return chain.paths().values().iterator().next();
  }

  private static Chain changed(Chain chain, Change change) {
    List<String> loop =
        ChainBudget.of(chain, onlyPath(chain)).loopStages().stream().map(StageDelay::name).toList();
    if (change instanceof StageChange ofStage
        && !(change instanceof StageChange.NotCompensated)
        && !loop.contains(ofStage.stage())) {
      throw new FaultFormatException(
          "the loop has no stage '" + ofStage.stage() + "'", Nearest.hint(ofStage.stage(), loop));
    }
    try {
      return change.on(chain);
    } catch (ChangeFormatException e) {
      throw new FaultFormatException(e.getMessage(), e.hint());
    }
  }

  private static <F extends Fault> Stream<F> only(Class<F> kind, List<Fault> faults) {
    return faults.stream().filter(kind::isInstance).map(kind::cast);
  }
}
