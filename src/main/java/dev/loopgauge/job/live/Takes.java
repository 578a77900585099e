package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.measure.Soak;
import java.io.IOException;
import java.util.EnumSet;
import java.util.Optional;

/**
 * Take after take of one path in one session.
 *
 * @param reading what each take measures
 * @param soak keeps count
 */
record Takes(Repeatable reading, Soak soak) {
  /** After these the session may go on. */
  static final EnumSet<CaptureException.Kind> PASSING =
      EnumSet.of(CaptureException.Kind.SHORT, CaptureException.Kind.TIMED_OUT);

  /** After this many failed takes in a row the sound counts as gone. */
  private static final int MOST_FAILED = 3;

  /** Whether it is enough. */
  interface Enough {
    /** Asked after each take. */
    boolean reached() throws IOException;
  }

  /**
   * Takes once, and goes on until it is enough or the sound is gone.
   *
   * @param enough when to end
   * @param after what to do after each take
   * @return why it ended before; empty where it was enough
   * @throws CaptureException when not even the first take could be recorded
   */
  Optional<CaptureException> until(Enough enough, Runnable after)
      throws CaptureException, IOException {
    int failed = 0;
    do {
      try {
        soak.add(reading.take());
        failed = 0;
      } catch (CaptureException e) {
        failed++;
        if (soak.takes() == 0) {
          throw e;
        }
        soak.add(e);
        if (!PASSING.contains(e.kind()) || failed == MOST_FAILED) {
          return Optional.of(e);
        }
      }
      after.run();
    } while (!enough.reached());
    return Optional.empty();
  }
}
