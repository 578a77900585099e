package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;

/** Makes the back end that imitates a rig from its chain file, without a sound card. */
public interface BuiltInRig {
  /** The name of its back end. */
  String NAME = "simulated";

  /**
   * A rig.
   *
   * @throws dev.loopgauge.job.UsageException when a fault is none
   */
  AudioBackend imitating(ImitatedRig rig);
}
