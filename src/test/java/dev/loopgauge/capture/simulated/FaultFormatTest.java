package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.RigChange;
import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.BandPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;
import dev.loopgauge.signal.filter.Peak;
import dev.loopgauge.signal.filter.Shelf;
import java.util.List;
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

  @Test
  void readsFilters() {
    assertEquals(new Filtered(new HighPass(80, 4)), FaultFormat.parse("high-pass=80:4"));
    assertEquals(new Filtered(new HighPass(80, 2)), FaultFormat.parse("high-pass=80"));
    assertEquals(new Filtered(new LowPass(8000, 1)), FaultFormat.parse("low-pass=8000:1"));
    assertEquals(crossover(4, Crossover.Output.LOW), FaultFormat.parse("crossover-low=80"));
    assertEquals(crossover(2, Crossover.Output.HIGH), FaultFormat.parse("crossover-high=80:2"));
    assertEquals(crossover(4, Crossover.Output.SUM), FaultFormat.parse("crossover-sum=80:4"));
    assertEquals(shelf(Shelf.Side.LOW, 200, -6), FaultFormat.parse("low-shelf=200:-6"));
    assertEquals(shelf(Shelf.Side.HIGH, 4000, 6), FaultFormat.parse("high-shelf=4000:6"));
    assertEquals(new Filtered(new Peak(1000, 6, 2)), FaultFormat.parse("peak=1000:6:2"));
    assertEquals(new Filtered(new Peak(1000, 6, 1)), FaultFormat.parse("peak=1000:6"));
    assertEquals(new Filtered(new AllPass(1000, 1)), FaultFormat.parse("all-pass=1000:1"));
    assertEquals(new Filtered(BandPass.TELEPHONE), FaultFormat.parse("telephone"));
    assertEquals(new Filtered(BandPass.SUBWOOFER), FaultFormat.parse("subwoofer"));
  }

  @Test
  void readsEffectsAndStutters() {
    assertEquals(new Chorus(0.5, 3, -6), FaultFormat.parse("chorus=0.5:3"));
    assertEquals(new Chorus(0.5, 3, 0), FaultFormat.parse("chorus=0.5:3:0"));
    assertEquals(new Compressor(-30, 4, 5, 100), FaultFormat.parse("compressor=-30:4"));
    assertEquals(new Compressor(-30, 4, 1, 50), FaultFormat.parse("compressor=-30:4:1:50"));
    assertEquals(new Stutters(List.of(0.3, 0.5)), FaultFormat.parse("stutters=0.3:0.5"));
  }

  private static Fault crossover(int order, Crossover.Output output) {
    return new Filtered(new Crossover(80, order, output));
  }

  private static Fault shelf(Shelf.Side side, double hertz, double db) {
    return new Filtered(new Shelf(side, hertz, db));
  }

  @ParameterizedTest
  @CsvSource({
    "nosie=-30, noise",
    "invertd, inverted",
    "blocksize=128, block-size",
    "drop-out=1, dropout",
    "highpass=80, high-pass",
    "allpass=80, all-pass"
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
        "high-pass=0",
        "high-pass=80:5",
        "high-pass=80:1.5",
        "high-pass=80:2:3",
        "crossover-low=80:3",
        "low-shelf=200",
        "peak=1000:6:0",
        "all-pass=1000:3",
        "telephone=300",
        "chorus=0.5",
        "chorus=0.5:16",
        "compressor=-30",
        "compressor=-30:0.5",
        "stutters=0.3:-1",
        "stutters=",
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

  @Test
  void saysHowManyFiguresThereAre() {
    assertEquals(
        "fault 'peak=1000': expected 2 to 3 figures with ':' between them, not 1",
        refused("peak=1000").getMessage());
    assertEquals("write, for example, peak=1000:6:2", refused("peak=1000").hint());
    assertEquals(
        "fault 'high-pass=80:1.5': 1.5 is not a whole number",
        refused("high-pass=80:1.5").getMessage());
  }

  private static FaultFormatException refused(String text) {
    return assertThrows(FaultFormatException.class, () -> FaultFormat.parse(text), text);
  }
}
