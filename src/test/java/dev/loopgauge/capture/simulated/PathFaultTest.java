package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PathFaultTest {
  private static final List<String> PATHS = List.of("vocal-house", "truck-mix");

  @Test
  void thePathEndsAtTheFirstColonBeforeAnyEqualsSign() {
    assertEquals(
        new PathFault(Optional.of("truck-mix"), new Dropout(0.4, 20), FaultTime.ALWAYS),
        PathFault.parse("truck-mix:dropout=0.4:20", PATHS));
    assertEquals(
        new PathFault(Optional.of("truck-mix"), new Inverted(), FaultTime.ALWAYS),
        PathFault.parse("truck-mix:inverted", PATHS));
  }

  @Test
  void aColonInTheValueNamesNoPath() {
    assertEquals(
        new PathFault(Optional.empty(), new SecondArrival(2.5, -6), FaultTime.ALWAYS),
        PathFault.parse("second-arrival=2.5:-6", PATHS));
  }

  @Test
  void behindTheLastAtStandsWhenItBeginsAndEnds() {
    assertEquals(
        new PathFault(
            Optional.of("truck-mix"),
            new Dropout(0, 20),
            new FaultTime(75.5, Double.POSITIVE_INFINITY)),
        PathFault.parse("truck-mix:dropout=0:20@75.5", PATHS));
    assertEquals(
        new PathFault(Optional.empty(), new Inverted(), new FaultTime(60, 70)),
        PathFault.parse("inverted@60-70", PATHS));
    assertEquals(
        new PathFault(Optional.of("v@2"), new Inverted(), FaultTime.ALWAYS),
        PathFault.parse("v@2:inverted", List.of("v@2")));
  }

  @ParameterizedTest
  @CsvSource({
    "inverted@, '' is no number",
    "inverted@soon, 'soon' is no number",
    "inverted@-3, '' is no number",
    "inverted@60-, '' is no number",
    "inverted@70-60, a fault can't end at 60.0 s",
    "inverted@60-60, a fault can't end at 60.0 s",
    "inverted@1-2-3, expected 2 figures",
    "inverted@2e6, a fault's beginning must be 0 to 1000000 s"
  })
  void aTimeThatIsNoneIsRefused(String text, String reason) {
    FaultFormatException refused = refused(text);
    assertTrue(refused.getMessage().contains(reason), refused.getMessage());
    assertEquals("write @60 from second 60 on, @60-70 for ten seconds", refused.hint());
  }

  @Test
  void anUnknownPathIsRefusedWithTheNearestName() {
    FaultFormatException refused = refused("truckmix:inverted");
    assertEquals("the rig has no path 'truckmix'", refused.getMessage());
    assertEquals("'truck-mix' is the nearest known name", refused.hint());
  }

  @Test
  void theOtherPathOfAFaultMustBeThereToo() {
    assertEquals("the rig has no path 'stage'", refused("swapped=stage").getMessage());
    assertEquals(
        "the rig has no path 'stage'", refused("vocal-house:crosstalk=stage:-3").getMessage());
    assertEquals(
        new PathFault(Optional.of("vocal-house"), new Crosstalk("truck-mix", -3), FaultTime.ALWAYS),
        PathFault.parse("vocal-house:crosstalk=truck-mix:-3", PATHS));
  }

  @Test
  void aFaultOfAPathIsRefusedAsOneOfTheRigIs() {
    assertEquals("there is no fault 'loud'", refused("truck-mix:loud").getMessage());
  }

  private static FaultFormatException refused(String text) {
    return assertThrows(FaultFormatException.class, () -> PathFault.parse(text, PATHS), text);
  }
}
