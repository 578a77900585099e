package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.result.Band;
import java.util.List;
import org.junit.jupiter.api.Test;

class HeardOctavesTest {
  private static Band octave(double hertz, double levelDb) {
    return new Band(hertz, 0, 0.1, levelDb, 0.1);
  }

  @Test
  void countsAnOctaveOnceTwoWindowsToldIt() {
    HeardOctaves once = HeardOctaves.NONE.then(List.of(octave(63, -6), octave(125, -6)));
    assertEquals(List.of(), once.fainter());
    assertEquals(List.of(octave(63, -7)), once.then(List.of(octave(63, -7))).fainter());
  }

  /** One window with 41 dB too much of an octave that the next one doesn't tell. */
  @Test
  void takesNoSingleWindowsWordForALouderOctave() {
    HeardOctaves heard =
        HeardOctaves.NONE
            .then(List.of(octave(63, -6), octave(125, -6)))
            .then(List.of(octave(63, -6), octave(125, -6)))
            .then(List.of(octave(63, 41), octave(125, -6)))
            .then(List.of(octave(125, -6)));
    assertEquals(List.of(octave(125, -6), octave(63, -6)), heard.fainter());
  }

  @Test
  void followsAnOctaveThatStaysLouder() {
    HeardOctaves heard = HeardOctaves.NONE;
    for (double levelDb : new double[] {-6, -6, -3, -3}) {
      heard = heard.then(List.of(octave(63, levelDb)));
    }
    assertEquals(List.of(octave(63, -3)), heard.fainter());
  }
}
