package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AirTest {
  /** Speeds derived from the formula of ISO 9613-1:1993 (reported), to their last printed digit. */
  @ParameterizedTest
  @CsvSource({"0, 331.286", "10, 337.296", "20, 343.200", "30, 349.005"})
  void speedOfSoundFollowsIso9613(double celsius, double metresPerSecond) {
    assertEquals(metresPerSecond, Air.metresPerSecond(celsius), 0.0005);
  }

  /**
   * Speeds in dry air by Cramer, JASA 93(5), 1993 (derived): another formula, which the 0.05 % of
   * its carbon dioxide and its real gas terms keep apart from ISO's.
   */
  @ParameterizedTest
  @CsvSource({"0, 331.448", "10, 337.459", "20, 343.359", "30, 349.148"})
  void speedOfSoundAgreesWithCramerToHalfAPerMille(double celsius, double metresPerSecond) {
    assertEquals(1, Air.metresPerSecond(celsius) / metresPerSecond, 0.0005);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-20.1, 50.1, -300, Double.NaN, Double.POSITIVE_INFINITY})
  void temperaturesOutsideTheFormulaAreRefused(double celsius) {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> Air.metresPerSecond(celsius));
    assertTrue(e.getMessage().contains(String.valueOf(celsius)), e.getMessage());
  }

  /** Distances at 20 C and 48 kHz (derived from ISO 9613-1). */
  @Test
  void tenMetresAreTheirPublishedDelay() {
    PathBudget budget = ChainFiles.budget(ChainFiles.rig("metres: 10"), "all");
    assertEquals(29.1375, budget.delay().ms(), 0.00005);
    assertEquals(1398.60, budget.delay().samples(), 0.005);
  }

  @Test
  void aHundredFeetAreTheirPublishedDelay() {
    PathBudget budget = ChainFiles.budget(ChainFiles.rig("feet: 100"), "all");
    assertEquals(88.811, budget.delay().ms(), 0.0005);
  }

  /** 100 m at 0 and 30 C (derived from ISO 9613-1). */
  @ParameterizedTest
  @CsvSource({"0, 301.85", "30, 286.53"})
  void warmAirIsFaster(double celsius, double ms) {
    assertEquals(ms, field(100, celsius), 0.005);
  }

  /**
   * Common practice, no source: a delay tower at 75 m needs about 218 ms at 20 C and 212 ms at 38
   * C. By ISO 9613-1 (reported): 75 / 343.2 = 218.53 ms and 75 / 353.58 = 212.12 ms.
   */
  @ParameterizedTest
  @CsvSource({"20, 218, 218.53", "38, 212, 212.12"})
  void towerNeedsWhatTheTradeSays(double celsius, double about, double ms) {
    assertEquals(about, field(75, celsius), 1);
    assertEquals(ms, field(75, celsius), 0.005);
  }

  /** The delay of a distance in ms. */
  private static double field(double metres, double celsius) {
    String yaml =
        ("sample-rate: 48000\nair-temperature: " + celsius)
            + ("\nstages: { field: { metres: " + metres + " } }\n")
            + "paths: { p: { listener: house, stages: [field] } }";
    return ChainFiles.budget(ChainFiles.parsed(yaml), "p").delay().ms();
  }

  /** One sample at 48 kHz is 7.150 mm, a millisecond 1.12598 feet at 20 C (derived). */
  @Test
  void delaysAreTheirPublishedDistances() {
    PathBudget sample = ChainFiles.budget(ChainFiles.rig("samples: 1"), "all");
    PathBudget millisecond = ChainFiles.budget(ChainFiles.rig("ms: 1"), "all");
    assertEquals(0.007150, sample.equivalentMetres(), 0.0000005);
    assertEquals(1.12598, millisecond.equivalentFeet(), 0.000005);
  }
}
