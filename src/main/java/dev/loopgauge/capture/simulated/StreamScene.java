package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What an effect may know of the stream it works in.
 *
 * @param rate the rate of the sound
 * @param blockSize one block of the rig's host, in samples of that rate
 * @param since the frame from which the effect counts its own time
 * @param seed of its chance: the same stretch has the same chance, however often it is read
 */
record StreamScene(SampleRate rate, int blockSize, long since, long seed) {
  /** An odd number whose multiples are far apart: 2 to the 64th over the golden ratio. */
  static final long STEP = 0x9E3779B97F4A7C15L;

  /** The same with a chance of its own, and another for each number. */
  StreamScene apart(int number) {
    return new StreamScene(rate, blockSize, since, new SplittableRandom(seed + number).nextLong());
  }

  /** The same for an effect that begins that many seconds after the others. */
  StreamScene startingAt(double seconds) {
    return new StreamScene(rate, blockSize, since + Math.round(seconds * rate.hertz()), seed);
  }

  /** The scene of a stretch that begins at a frame. */
  Scene at(long from) {
    SplittableRandom steady = new SplittableRandom(seed);
    SplittableRandom own = new SplittableRandom(seed ^ (from + 1) * STEP);
    return new Scene(rate, blockSize, List.of(), since - from, steady, own);
  }
}
