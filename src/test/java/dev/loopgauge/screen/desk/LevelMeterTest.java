package dev.loopgauge.screen.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.screen.state.Doing.Level;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class LevelMeterTest {
  private static final int FRAMES = 480;

  private final List<List<Level>> told = new ArrayList<>();
  private final LevelMeter meter = LevelMeter.ofTakes(List.of("return 2"), true, told::add);

  private Level heard(double... values) {
    meter.begin(List.of(true));
    for (double value : values) {
      float[] samples = new float[FRAMES];
      Arrays.fill(samples, (float) value);
      meter.begin(List.of(true));
      meter.recorded(new float[][] {samples}, FRAMES);
    }
    meter.end();
    return told.get(told.size() - 1).get(0);
  }

  @Test
  void clipsAtTheLargestValueOf16BitsAndNotOneStepBelow() {
    assertFalse(heard(32_766 / 32_768.0).clipped());
    assertTrue(heard(LevelMeter.FULL_SCALE).clipped());
  }

  @Test
  void aClipHolds() {
    assertTrue(heard(1, 0.1, 0.1).clipped());
  }

  @Test
  void moreThanTwoStepsOf16BitsAreHeardAndFewerAreNot() {
    assertFalse(heard(0.99 * LevelMeter.SOUND).heard());
    assertTrue(heard(1.01 * LevelMeter.SOUND).heard());
  }

  @Test
  void tellsTheLastPeakWithItsUnit() {
    assertEquals(new Level("return 2", "-20 dBFS", 67, false, true), heard(0.1));
    assertEquals("below -60 dBFS", heard(0).figure());
  }

  /** The first is told at once and the last at the end, whatever comes between. */
  @Test
  void tellsNoMoreThanThreeTimesASecond() {
    long began = System.nanoTime();
    double[] values = new double[2_000];
    Arrays.fill(values, 0.5);
    heard(values);
    long most = 2 + (System.nanoTime() - began) / LevelMeter.LEAST_NANOS;
    assertTrue(told.size() <= most, told.size() + " times");
  }

  /** Two seconds of a stream: what was loud before them says nothing of now. */
  @Test
  void aStreamIsSilentOnceNothingWasHeardForTwoSeconds() {
    SampleRate rate = new SampleRate(48_000);
    LevelMeter stream = LevelMeter.ofStream(List.of("lead, return 2"), rate, told::add);
    stream.block(block(1, 0.5f), 1);
    stream.block(block(2 * rate.hertz() - 1, 0), 2 * rate.hertz() - 1);
    stream.end();
    assertTrue(last().heard());
    stream.block(block(1, 0), 1);
    stream.end();
    assertFalse(last().heard());
  }

  private static float[][] block(int frames, float value) {
    float[] samples = new float[frames];
    Arrays.fill(samples, value);
    return new float[][] {samples};
  }

  private Level last() {
    return told.get(told.size() - 1).get(0);
  }
}
