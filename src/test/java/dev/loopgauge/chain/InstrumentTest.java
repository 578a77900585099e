package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InstrumentTest {
  /** Lester and Boley, AES paper 7198, 2007, Table 1, in ms (reported). */
  @ParameterizedTest
  @CsvSource({
    "SAX,      0,   1.5,  3,    10",
    "VOICE,    1,   10,   6.5,  26",
    "GUITAR,   4.5, 6.5,  14.5, 16",
    "DRUMS,    8,   9,    24.5, 25",
    "BASS,     4.5, 8,    25.5, 30",
    "KEYBOARD, 27,  22,   43,   40.5"
  })
  void guidanceIsThePublishedRow(
      Instrument played, double inEarGood, double wedgeGood, double inEarFair, double wedgeFair) {
    assertEquals(Optional.of(new Guidance(inEarGood, inEarFair)), played.guidance(Listener.IN_EAR));
    assertEquals(Optional.of(new Guidance(wedgeGood, wedgeFair)), played.guidance(Listener.WEDGE));
    assertEquals(Optional.empty(), played.guidance(Listener.HOUSE));
    assertEquals(Optional.empty(), played.guidance(Listener.STREAM));
  }

  @ParameterizedTest
  @CsvSource({"1, GOOD", "1.01, FAIR", "6.5, FAIR", "6.51, WORSE"})
  void figuresOfTheGuidanceAreInclusive(double ms, Guidance.Rating rating) {
    assertEquals(rating, new Guidance(1, 6.5).rating(ms));
  }

  @Test
  void guidanceThatCannotBeIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Guidance(-1, 3));
    assertThrows(IllegalArgumentException.class, () -> new Guidance(4, 3));
  }
}
