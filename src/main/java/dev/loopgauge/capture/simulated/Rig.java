package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
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
    List<ChainFault> wrong = only(ChainFault.class, faults).toList();
    Chain found = chain.withSampleRate(rate);
    for (ChainFault fault : wrong) {
      found = fault.on(found);
    }
    List<StageDelay> stages = ChainBudget.of(found, path).loopStages();
    for (ChainFault fault : wrong) {
      stages = fault.on(stages);
    }
    double seconds = stages.stream().mapToDouble(stage -> stage.delay().seconds()).sum();
    return new Rig(
        Latency.ofSeconds(seconds, rate),
        rate.samplesIn((double) found.blockSize() / found.rate().hertz()),
        only(SoundFault.class, faults).toList(),
        only(CardFault.class, faults).findFirst());
  }

  private static <F extends Fault> Stream<F> only(Class<F> kind, List<Fault> faults) {
    return faults.stream().filter(kind::isInstance).map(kind::cast);
  }
}
