package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.Rig;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import java.util.List;
import org.junit.jupiter.api.Test;

class MutualUncertaintyTest {
  private static final double WAVE = 1000.0;

  /** Arrivals whose correlations overlap, and one far from them. */
  private static final List<FittedArrival> ARRIVALS =
      List.of(
          new FittedArrival(600, 0.5), new FittedArrival(603, -0.2), new FittedArrival(5000, 0.1));

  private static final Spectra SPECTRA =
      Spectra.of(
          List.of(
              Rig.reading(
                  Rig.sum(Rig.arrival(600, 0.5), Rig.arrival(603, -0.2), Rig.arrival(5000, 0.1)),
                  -200,
                  0)),
          0.2);

  @Test
  void findsTheGainsOfCopiesThatOverlap() {
    double[] gains = new MutualUncertainty(SPECTRA.auto(), ARRIVALS).gains(SPECTRA.cross());
    for (int i = 0; i < ARRIVALS.size(); i++) {
      assertEquals(ARRIVALS.get(i).gain(), gains[i], 1e-6, "arrival " + i);
    }
  }

  @Test
  void aCopyIsLessSureTheNearerAnotherIs() {
    assertEquals(1, widening(new FittedArrival(600 + WAVE, 1)), 0.01);
    double near = widening(new FittedArrival(603, 1));
    double nearer = widening(new FittedArrival(601, 1));
    assertEquals(true, near > 1.02 && nearer > near, near + " and " + nearer);
  }

  /**
   * Of two arrivals of which only the gains are unknown it is 1 / sqrt(1 - r^2); more with delays.
   */
  private static double widening(FittedArrival other) {
    return new MutualUncertainty(SPECTRA.auto(), List.of(new FittedArrival(600, 1), other))
        .gainWidening(0);
  }
}
