package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import java.util.List;

/** Makes the back end that imitates a rig from its chain file, without a sound card. */
public interface BuiltInRig {
  /** The name of its back end. */
  String NAME = "simulated";

  /**
   * A rig.
   *
   * @param path the path that is measured
   * @param faults what is wrong with it, as {@code --fault} takes them
   * @param seed of its noise
   * @throws dev.loopgauge.job.UsageException when a fault is none
   */
  AudioBackend imitating(Chain chain, ChainPath path, List<String> faults, long seed);
}
