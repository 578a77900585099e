package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.RigChange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class FaultFormatTest {
  @Test
  void readsFiguresInTheUnitsOfTheTrade() {
    assertEquals(new ChainFault(new RigChange.BlockSize(128)), FaultFormat.parse("block-size=128"));
    assertEquals(new Gain(-12), FaultFormat.parse("gain=-12"));
    assertEquals(new Noise(-30), FaultFormat.parse("noise=-30"));
    assertEquals(new Hum(-20), FaultFormat.parse("hum=-20"));
    assertEquals(new Overload(-6), FaultFormat.parse("clip=-6"));
    assertEquals(new BandLimit(200, 4000), FaultFormat.parse("band-limit=200-4000"));
    assertEquals(new ClockFault(-12.5), FaultFormat.parse("drift=-12.5"));
    assertEquals(new LostBlock(0.4), FaultFormat.parse("lost-block=0.4"));
  }

  @Test
  void readsFaultsThatAreJustThere() {
    assertEquals(new Inverted(), FaultFormat.parse("inverted"));
    assertEquals(new Silent(), FaultFormat.parse("silent"));
    assertEquals(new WrongSignal(), FaultFormat.parse("wrong-signal"));
    assertEquals(new Feedback(), FaultFormat.parse("feedback"));
    assertEquals(CardFault.GONE, FaultFormat.parse("gone"));
    assertEquals(CardFault.SHORT, FaultFormat.parse("short"));
  }

  @Test
  void takesTheUsualSecondFigureWhereNoneIsGiven() {
    assertEquals(new SecondArrival(2.5, -6), FaultFormat.parse("second-arrival=2.5"));
    assertEquals(new SecondArrival(2.5, -1), FaultFormat.parse("second-arrival=2.5:-1"));
    assertEquals(new Dropout(0.4, 20), FaultFormat.parse("dropout=0.4"));
    assertEquals(new Dropout(0.4, 5), FaultFormat.parse("dropout=0.4:5"));
  }

  @ParameterizedTest
  @CsvSource({
    "nosie=-30, noise",
    "invertd, inverted",
    "blocksize=128, block-size",
    "drop-out=1, dropout"
  })
  void namesTheNearestFault(String text, String nearest) {
    FaultFormatException refused = refused(text);
    assertTrue(refused.getMessage().endsWith("did you mean '" + nearest + "'?"), text);
    assertTrue(refused.hint().contains("block-size=128, "), refused.hint());
  }

  @Test
  void listsTheFaultsWhereNoneIsNear() {
    FaultFormatException refused = refused("thunderstorm");
    assertEquals("there is no fault 'thunderstorm'", refused.getMessage());
    assertTrue(refused.hint().contains("inverted, "), refused.hint());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "gain",
        "gain=",
        "gain=loud",
        "gain=NaN",
        "gain=-1e999",
        "inverted=yes",
        "block-size=0",
        "block-size=12.5",
        "block-size=99999999999",
        "band-limit=200",
        "band-limit=4000-200",
        "band-limit=200-4000-8000",
        "second-arrival=0",
        "second-arrival=1:2:3",
        "dropout=-1",
        "drift=1e9",
        ""
      })
  void refusesWithAWayOut(String text) {
    FaultFormatException refused = refused(text);
    assertTrue(refused.getMessage().lines().count() == 1, refused.getMessage());
    assertTrue(!refused.hint().isBlank(), text);
  }

  @Test
  void saysTheRangeAndTheFigureThatMissedIt() {
    assertEquals(
        "fault 'noise=30': noise must be -140 to 0 dBFS, not 30", refused("noise=30").getMessage());
  }

  private static FaultFormatException refused(String text) {
    return assertThrows(FaultFormatException.class, () -> FaultFormat.parse(text), text);
  }
}
