package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What an effect may know of the take, or of the stretch of a stream, that it works in.
 *
 * @param rate the rate of the sound
 * @param blockSize one block of the rig's host, in samples of that rate
 * @param listening the stretches in which nothing is played
 * @param start the place in the sound from which the effect counts its own time; before 0 where the
 *     sound begins later
 * @param steady the source of what stays as it is through a stream, such as a phase
 * @param random the one source of all other chance for this return of this take or stretch
 */
record Scene(
    SampleRate rate,
    int blockSize,
    List<Take.Segment> listening,
    long start,
    SplittableRandom steady,
    SplittableRandom random) {
  Scene {
    listening = List.copyOf(listening);
  }

  /** A take, which knows one chance only. */
  Scene(SampleRate rate, int blockSize, List<Take.Segment> listening, SplittableRandom random) {
    this(rate, blockSize, listening, 0, random, random);
  }

  /** The same for an effect that begins that many seconds after the others. */
  Scene startingAt(double seconds) {
    long later = start + Math.round(seconds * rate.hertz());
    return new Scene(rate, blockSize, listening, later, steady, random);
  }

  /** The place in a sound of that length at which some seconds of the effect's time are over. */
  int placeOf(double seconds, int length) {
    return (int) Math.max(0, Math.min(length, start + Math.round(seconds * rate.hertz())));
  }
}
