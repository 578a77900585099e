package dev.loopgauge.job.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.Estimate;
import org.junit.jupiter.api.Test;

class WarmUpTest {
  @Test
  void goesTheWholeWayToANumber() {
    Estimate.Found found = assertInstanceOf(Estimate.Found.class, WarmUp.estimate());
    assertEquals(11, found.measurement().delay().samples(), 0.01);
    assertEquals(1, found.measurement().arrivals().size());
  }

  @Test
  void tellsItAsACommandDoes() {
    assertTrue(WarmUp.text().startsWith("MEASURED: the return is 11.00"), WarmUp.text());
  }
}
