package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import org.junit.jupiter.api.Test;

class ScheduleTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  private static Schedule turns(int turns) {
    return new Schedule(Signal.of(RATE, new double[48_000]), 480, 9600, 0, turns);
  }

  /** Clocks 977 ppm apart, as a converter was seen to put them, move the last turn by less. */
  @Test
  void leavesLaterTurnsRoomForClocksThatAreApart() {
    for (int count = 1; count <= 5; count++) {
      Schedule schedule = turns(count);
      assertTrue(schedule.leeway() > 977e-6 * schedule.start(count - 1), count + " turns");
    }
    assertEquals(174, turns(3).leeway());
  }

  @Test
  void leavesHalfOfTheRingingAtTheMost() {
    assertEquals(360, turns(7).leeway());
    assertEquals(360, turns(100).leeway());
  }
}
