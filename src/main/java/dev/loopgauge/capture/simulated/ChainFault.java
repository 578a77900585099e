package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Conditions;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;

/** A fault of the chain: the rig is not the one that the chain file describes. */
sealed interface ChainFault extends Fault {
  /** The chain as it is found. */
  default Chain on(Chain chain) {
    return chain;
  }

  /**
   * The stages of the loop as they are found.
   *
   * @throws FaultFormatException when the fault names a stage that the loop hasn't
   */
  default List<StageDelay> on(List<StageDelay> loop) {
    return loop;
  }

  /**
   * The host was left at another block size.
   *
   * @param samples its block, 1 to {@value Conditions#LARGEST_BLOCK} samples
   */
  record BlockSize(int samples) implements ChainFault {
    public BlockSize {
      Limits.check("the block size", samples, 1, Conditions.LARGEST_BLOCK, "samples");
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withBlockSize(samples);
    }
  }

  /**
   * The rig runs at another rate than the card, and meets it in analogue: what it delays by samples
   * takes longer at a lower rate.
   *
   * @param rate the rig's rate
   */
  record ClockRate(SampleRate rate) implements ChainFault {
    @Override
    public Chain on(Chain chain) {
      return chain.withSampleRate(rate);
    }
  }

  /**
   * A stage was left out.
   *
   * @param stage its name in the chain file
   */
  record Absent(String stage) implements ChainFault {
    @Override
    public List<StageDelay> on(List<StageDelay> loop) {
      List<StageDelay> found = new ArrayList<>(loop);
      found.remove(find(stage, loop));
      return found;
    }
  }

  /**
   * The sound runs through a stage twice, as through an insert patched two times.
   *
   * @param stage its name in the chain file
   */
  record Twice(String stage) implements ChainFault {
    @Override
    public List<StageDelay> on(List<StageDelay> loop) {
      List<StageDelay> found = new ArrayList<>(loop);
      found.add(find(stage, loop));
      return found;
    }
  }

  private static StageDelay find(String stage, List<StageDelay> loop) {
    List<String> names = loop.stream().map(StageDelay::name).toList();
    if (!names.contains(stage)) {
      throw new FaultFormatException(
          "the loop has no stage '" + stage + "'", Nearest.hint(stage, names));
    }
    return loop.get(names.indexOf(stage));
  }
}
