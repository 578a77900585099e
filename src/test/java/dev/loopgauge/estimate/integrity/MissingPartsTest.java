package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.integrity.LostSound.Heard;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MissingPartsTest {
  private static final SplittableRandom RANDOM = new SplittableRandom(7);

  /** A window of an arrival of energy 1, of which the return holds so much, among other sound. */
  private static Heard window(double held, double other) {
    double met = Math.sqrt(other) * 0.1 * RANDOM.nextGaussian();
    double product = held + met;
    double all = held * held + other + 2 * held * met;
    return new Heard(0, 1, 1, product, all, all - 2 * product + 1, 0, 0);
  }

  private static List<Heard> windows(int count, double held, double other) {
    List<Heard> windows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      windows.add(window(held, other));
    }
    return windows;
  }

  private static double missing(List<Heard> one, List<Heard> other) {
    List<Heard> both = new ArrayList<>(one);
    both.addAll(other);
    return MissingParts.share(List.of(both));
  }

  @Test
  void aCopyIsThereInSilenceAndInNoise() {
    assertEquals(0, missing(windows(100, 1, 1e-6), windows(100, 1, 1)));
    assertEquals(0, missing(windows(100, 1, 10), windows(100, 1, 30)));
  }

  @Test
  void whatTheReturnDoesNotHoldIsMissingWhateverElseItHolds() {
    assertEquals(0.3, missing(windows(140, 1, 0.1), windows(60, 0, 1e-9)), 0.07);
    assertEquals(0.3, missing(windows(140, 1, 0.1), windows(60, 0, 10)), 0.07);
  }

  @Test
  void aQuieterCopyIsNotMissing() {
    assertEquals(0, missing(windows(100, 1, 0.001), windows(100, 0.1, 0.001)));
  }

  @Test
  void aQuieterCopyAmongOtherSoundStandsOutByItsManyWindows() {
    assertTrue(missing(windows(100, 1, 0.01), windows(100, 0.4, 1)) <= 0.05);
  }

  @Test
  void nothingIsMissingOfNothing() {
    assertEquals(0, MissingParts.share(List.of()));
    assertEquals(
        0, MissingParts.share(List.of(Collections.nCopies(9, new Heard(0, 0, 0, 0, 1, 1, 0, 0)))));
  }
}
