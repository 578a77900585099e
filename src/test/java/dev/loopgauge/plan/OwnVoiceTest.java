package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OwnVoiceTest {
  /** Agnew and Thornton 2000 (issuer, abstract): noticeable 3-5 ms, objectionable above 10 ms. */
  @ParameterizedTest
  @CsvSource({
    "0, UNNOTICED",
    "2.99, UNNOTICED",
    "3, NOTICEABLE",
    "10, NOTICEABLE",
    "10.01, OBJECTIONABLE"
  })
  void delayDecidesHowTheOwnVoiceIsHeard(double ms, OwnVoice heard) {
    assertEquals(heard, OwnVoice.at(ms));
  }
}
