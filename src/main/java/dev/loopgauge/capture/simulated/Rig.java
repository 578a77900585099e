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
 * What stands between a send and a return, as the faults leave it.
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
   * @throws FaultFormatException when a fault names a stage that the path's loop hasn't, or a
   *     filter that the rate is too low for
   */
  static Rig of(Chain chain, ChainPath path, List<Fault> faults, SampleRate rate) {
    Chain found = chain.withSampleRate(rate).only(path);
    for (ChainFault fault : only(ChainFault.class, faults).toList()) {
      found = changed(found, fault.change());
    }
    only(SoundFault.class, faults).forEach(fault -> fault.checkAt(rate));
    double seconds = ChainBudget.of(found, onlyPath(found)).loop().seconds();
    return new Rig(
        Latency.ofSeconds(seconds, rate),
        rate.samplesIn((double) found.blockSize() / found.rate().hertz()),
        only(SoundFault.class, faults).toList(),
        only(CardFault.class, faults).findFirst());
  }

  /** A straight cable. */
  static Rig cable(SampleRate rate) {
    return new Rig(new Latency(0, rate), 1, List.of(), Optional.empty());
  }

  /** Whether a path can have a fault: it can't where the fault is in a stage that it hasn't. */
  static boolean canHave(Chain chain, ChainPath path, Fault fault) {
    return !(fault instanceof ChainFault changed)
        || lacking(chain.only(path), changed.change()).isEmpty();
  }

  private static ChainPath onlyPath(Chain chain) {
    return chain.paths().values().iterator().next();
  }

  private static Chain changed(Chain chain, Change change) {
    Optional<String> lacking = lacking(chain, change);
    if (lacking.isPresent()) {
      throw new FaultFormatException(
          "the loop has no stage '" + lacking.get() + "'",
          Nearest.hint(lacking.get(), loop(chain)));
    }
    try {
      return change.on(chain);
    } catch (ChangeFormatException e) {
      throw new FaultFormatException(e.getMessage(), e.hint());
    }
  }

  /** The stage that a change is of, where the loop hasn't got it. */
  private static Optional<String> lacking(Chain chain, Change change) {
    return change instanceof StageChange ofStage
            && !(change instanceof StageChange.NotCompensated)
            && !loop(chain).contains(ofStage.stage())
        ? Optional.of(ofStage.stage())
        : Optional.empty();
  }

  private static List<String> loop(Chain chain) {
    return ChainBudget.of(chain, onlyPath(chain)).loopStages().stream()
        .map(StageDelay::name)
        .toList();
  }

  private static <F extends Fault> Stream<F> only(Class<F> kind, List<Fault> faults) {
    return faults.stream().filter(kind::isInstance).map(kind::cast);
  }
}
