package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class PathFaultTest {
  private static final List<String> PATHS = List.of("vocal-house", "truck-mix");

  @Test
  void thePathEndsAtTheFirstColonBeforeAnyEqualsSign() {
    assertEquals(
        new PathFault(Optional.of("truck-mix"), new Dropout(0.4, 20)),
        PathFault.parse("truck-mix:dropout=0.4:20", PATHS));
    assertEquals(
        new PathFault(Optional.of("truck-mix"), new Inverted()),
        PathFault.parse("truck-mix:inverted", PATHS));
  }

  @Test
  void aColonInTheValueNamesNoPath() {
    assertEquals(
        new PathFault(Optional.empty(), new SecondArrival(2.5, -6)),
        PathFault.parse("second-arrival=2.5:-6", PATHS));
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
        new PathFault(Optional.of("vocal-house"), new Crosstalk("truck-mix", -3)),
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
