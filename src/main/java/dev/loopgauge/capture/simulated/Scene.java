package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What an effect may know of the take it works in.
 *
 * @param rate the rate of the sound
 * @param blockSize one block of the rig's host, in samples of that rate
 * @param listening the stretches in which nothing is played
 * @param random the one source of chance for this return of this take
 */
record Scene(
    SampleRate rate, int blockSize, List<Take.Stretch> listening, SplittableRandom random) {
  Scene {
    listening = List.copyOf(listening);
  }
}
