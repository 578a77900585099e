package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Standing;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DirectSoundTest {
  private static final String HOUSE = "vocal-house:  { listener: house";

  private static DirectSound beside(Chain chain) {
    return DirectSound.beside(chain, Harbour.budget(chain, "vocal-house")).orElseThrow();
  }

  /** 2 m at 20 C are 2 * 2.91375 = 5.8275 ms (ISO 9613-1, reported); the path 11.6458 ms. */
  @Test
  void gapIsThePathLessTheAirOfTheDirectSound() {
    DirectSound sound = beside(Harbour.with(HOUSE, HOUSE + ", direct-metres: 2"));
    assertEquals(5.8275, sound.direct().ms(), 1e-4);
    assertEquals(5.8184, sound.pathLater().ms(), 1e-4);
    assertTrue(sound.overlap().reason().contains("5-35 ms"), sound.overlap().reason());
  }

  @Test
  void feetAreMetresToo() {
    DirectSound feet = beside(Harbour.with(HOUSE, HOUSE + ", direct-feet: 100"));
    assertEquals(88.811, feet.direct().ms(), 5e-4);
  }

  /** 20 m of air are 58.275 ms, so the loudspeakers lead by 46.629 ms. */
  @Test
  void loudspeakersCanBeFirst() {
    DirectSound sound = beside(Harbour.with(HOUSE, HOUSE + ", direct-metres: 20"));
    assertEquals(-46.629, sound.pathLater().ms(), 1e-3);
    assertEquals(46.629, sound.overlap().delayMs(), 1e-3);
  }

  /**
   * Common practice, no source: 15 ms in the house pass unnoticed except in the front rows, which
   * also hear the stage direct. 15 ms are 720 samples: 161 more than the 559 there are.
   */
  @Test
  void fifteenMillisecondsPassInTheHouseButColourTheFrontRows() {
    Chain chain =
        Harbour.with(
            "box-out:     { samples: 11 }",
            "box-out: { samples: 172 }",
            HOUSE,
            HOUSE + ", direct-metres: 0");
    PathBudget budget = Harbour.budget(chain, "vocal-house");
    assertEquals(15, budget.delay().ms(), 1e-9);
    assertEquals(Standing.WITHIN, budget.standing());
    assertEquals(Blend.COLOURS, beside(chain).overlap().effect());
  }

  @Test
  void withoutADistanceThereIsNothingToCompare() {
    Chain chain = Harbour.chain();
    assertEquals(Optional.empty(), DirectSound.beside(chain, Harbour.budget(chain, "vocal-house")));
  }
}
