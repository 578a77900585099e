package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClockFitTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int FRAMES = 5 * 48_000;
  private static final int BLOCK = 1_024;
  private static final double REFUSED_FROM_PPM = 500;
  private static final long SEED = 18;

  /** When a frame is really there, in s, of a device at its stated rate. */
  private interface Course {
    double seconds(double stated);
  }

  @ParameterizedTest(name = "{0} ppm")
  @ValueSource(doubles = {-977, -480, -20, 0, 20, 480, 977})
  void findsHowFarTheRateIsOff(double ppm) {
    for (int trial = 0; trial < 50; trial++) {
      DeviceRate found = fit(stated -> stated / (1 + ppm / 1e6), trial).orElseThrow();
      assertEquals(ppm, found.ppm(), 100, "trial " + trial);
      assertTrue(found.uncertaintyPpm() < 100, "trial " + trial + ": " + found);
    }
  }

  @Test
  void coversTheTrueRateInNineteenOfTwentyTakes() {
    int inside = 0;
    for (int trial = 0; trial < 1_000; trial++) {
      DeviceRate found = fit(stated -> stated, trial).orElseThrow();
      inside += Math.abs(found.ppm()) <= found.uncertaintyPpm() ? 1 : 0;
    }
    assertTrue(inside >= 930, inside + " of 1000");
  }

  /** A server that waits for a late program stretches time once, by any length, anywhere. */
  @Test
  void oneLateCycleNeverLooksLikeAWrongRate() {
    for (double place = 0.02; place < 1; place += 0.02) {
      for (double late = 1e-4; late < 0.3; late *= 1.3) {
        double at = place * FRAMES / RATE.hertz();
        double by = late;
        Optional<DeviceRate> found = fit(stated -> stated < at ? stated : stated + by, 1);
        boolean refused =
            found.isPresent()
                && Math.abs(found.get().ppm()) > REFUSED_FROM_PPM + found.get().uncertaintyPpm();
        assertTrue(!refused, "late by " + by + " s at " + at + " s: " + found);
      }
    }
  }

  @Test
  void saysNothingOfATakeOfWhichOnePieceIsMissing() {
    ClockFit fit = new ClockFit(RATE, FRAMES);
    for (int frame = 0; frame < FRAMES * 3 / 4; frame += BLOCK) {
      fit.arrived(frame, frame * 1_000_000_000L / RATE.hertz());
    }
    assertEquals(Optional.empty(), fit.deviation());
  }

  /** Frames come in blocks and are seen up to 1.5 ms late, one in twenty up to 10 ms more. */
  private static Optional<DeviceRate> fit(Course course, long trial) {
    Random random = new Random(SEED + trial);
    ClockFit fit = new ClockFit(RATE, FRAMES);
    for (int frame = BLOCK; frame < FRAMES; frame += BLOCK) {
      double seen = course.seconds((double) frame / RATE.hertz()) + 0.0015 * random.nextDouble();
      seen += random.nextInt(20) == 0 ? 0.01 * random.nextDouble() : 0;
      fit.arrived(frame, Math.round(seen * 1e9));
    }
    return fit.deviation();
  }
}
