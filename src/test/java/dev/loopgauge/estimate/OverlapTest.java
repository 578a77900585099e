package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class OverlapTest {
  private static final double WAVE = 1000.0;

  /** Copies whose correlations overlap, and one far from them. */
  private static final List<Copy> COPIES =
      List.of(new Copy(600, 0.5), new Copy(603, -0.2), new Copy(5000, 0.1));

  private static final Spectra SPECTRA =
      Spectra.of(
          List.of(
              Rig.reading(
                  Rig.sum(Rig.copy(600, 0.5), Rig.copy(603, -0.2), Rig.copy(5000, 0.1)), -200, 0)),
          0.2);

  @Test
  void findsTheGainsOfCopiesThatOverlap() {
    double[] gains = new Overlap(SPECTRA.auto(), COPIES).gains(SPECTRA.cross());
    for (int i = 0; i < COPIES.size(); i++) {
      assertEquals(COPIES.get(i).gain(), gains[i], 1e-6, "copy " + i);
    }
  }

  @Test
  void aCopyIsLessSureTheNearerAnotherIs() {
    assertEquals(1, widening(new Copy(600 + WAVE, 1)), 0.01);
    double near = widening(new Copy(603, 1));
    double nearer = widening(new Copy(601, 1));
    assertEquals(true, near > 1.02 && nearer > near, near + " and " + nearer);
  }

  /**
   * Of two copies of which only the gains are unknown it is 1 / sqrt(1 - r^2); more with delays.
   */
  private static double widening(Copy other) {
    return new Overlap(SPECTRA.auto(), List.of(new Copy(600, 1), other)).gainWidening(0);
  }
}
