package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.Optional;

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
}
