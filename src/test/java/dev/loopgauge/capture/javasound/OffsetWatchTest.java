package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OffsetWatchTest {
  private static final int RATE = 48_000;
  private static final long SEED = 7;

  /** Looks once a millisecond, late by up to 5 ms, at two counts that step at other moments. */
  private static OptionalLong run(OffsetWatch watch, int step, int lost, double driftPpm) {
    Random random = new Random(SEED);
    for (double frame = 0; frame < 20 * RATE; frame += 48 + random.nextInt(240)) {
      double played = frame - (frame > 10 * RATE ? lost : 0);
      double recorded = frame * (1 + driftPpm / 1e6) + 1_500 + step / 3.0;
      OptionalLong shift = watch.look(counted(played, step), counted(recorded, step));
      if (shift.isPresent()) {
        return shift;
      }
    }
    return OptionalLong.empty();
  }

  private static long counted(double frames, int step) {
    return (long) Math.floor(frames / step) * step;
  }

  @ParameterizedTest(name = "steps of {0}")
  @ValueSource(ints = {1, 48, 64, 256, 480, 1_024, 4_096})
  void staysQuietWhileNothingIsLost(int step) {
    OffsetWatch watch = new OffsetWatch(RATE);
    assertEquals(OptionalLong.empty(), run(watch, step, 0, 0), "seed " + SEED);
    assertTrue(watch.verified() > 18 * RATE, "verified up to " + watch.verified());
  }

  @ParameterizedTest(name = "steps of {0}")
  @ValueSource(ints = {64, 256, 480, 1_024, 4_096})
  void noticesOneLostStep(int step) {
    OffsetWatch watch = new OffsetWatch(RATE);
    OptionalLong shift = run(watch, step, step, 0);
    assertEquals((double) step, (double) shift.orElseThrow(), step / 2.0, "seed " + SEED);
    assertTrue(watch.verified() < 10 * RATE, "verified up to " + watch.verified());
  }

  @Test
  void letsClocksRunApartSlowly() {
    assertEquals(OptionalLong.empty(), run(new OffsetWatch(RATE), 480, 0, 300), "seed " + SEED);
  }
}
