package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SelectedValueTest {
  private static final double LIMIT = 8;
  private static final int TOLD = 4000;

  /** Values that pass the limit, of means from where one in a hundred does to far above. */
  @ParameterizedTest
  @ValueSource(doubles = {5.7, 6.5, 7, 7.5, 8, 8.5, 9, 10, 12, 20})
  void coversTheMeanAsOftenAsTwoStandardDeviationsDo(double mean) {
    SplittableRandom random = new SplittableRandom(Math.round(10 * mean));
    int told = 0;
    int inside = 0;
    int above = 0;
    while (told < TOLD) {
      double value = mean + random.nextGaussian();
      if (value < LIMIT) {
        continue;
      }
      SelectedValue selected = SelectedValue.of(value, LIMIT);
      told++;
      inside += selected.low() <= mean && mean <= selected.high() ? 1 : 0;
      above += selected.middle() > mean ? 1 : 0;
    }
    // Five standard deviations of a share of 95.45 %, and of a half.
    assertEquals(0.9545, (double) inside / TOLD, 0.0165, "inside");
    assertEquals(0.5, (double) above / TOLD, 0.04, "above");
  }

  @Test
  void movesNothingFarAboveTheLimit() {
    SelectedValue just = SelectedValue.of(LIMIT + 5.99, LIMIT);
    assertEquals(LIMIT + 5.99, just.middle(), 0.001);
    assertEquals(LIMIT + 3.99, just.low(), 0.01);
    SelectedValue beyond = SelectedValue.of(LIMIT + 6.01, LIMIT);
    assertEquals(LIMIT + 6.01, beyond.middle());
  }

  /** What is next to never told can't be the mean of what was. */
  @Test
  void doesNotGoBelowWhatIsNextToNeverTold() {
    SelectedValue selected = SelectedValue.of(LIMIT, LIMIT);
    assertEquals(LIMIT - 3.09, selected.middle(), 1e-9);
    assertTrue(selected.high() <= LIMIT + 2);
  }
}
