package dev.loopgauge.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FadeTest {
  @Test
  void risesAndFallsAlikeAndLeavesTheMiddleAlone() {
    double[] samples = faded(101, 20);

    assertArrayEquals(Spectrum.reversed(samples), samples);
    for (int i = 1; i < 20; i++) {
      assertTrue(samples[i] > samples[i - 1], "at " + i);
    }
    for (int i = 20; i <= 80; i++) {
      assertEquals(1, samples[i]);
    }
  }

  /** Half a raised cosine, sampled between its steps: gains i and n-1-i add up to one. */
  @Test
  void isARaisedCosine() {
    double[] samples = faded(100, 10);

    for (int i = 0; i < 10; i++) {
      assertEquals(1, samples[i] + samples[9 - i], 1e-12);
      assertEquals(Math.pow(Math.sin(Math.PI * (i + 0.5) / 20), 2), samples[i], 1e-12);
    }
  }

  @Test
  void takesAtMostHalfOfWhatThereIs() {
    double[] samples = faded(5, 100);

    assertEquals(1, samples[2]);
    assertTrue(samples[0] < samples[1] && samples[1] < 1);
    assertArrayEquals(new double[] {1}, faded(1, 100));
    assertArrayEquals(new double[0], faded(0, 100));
  }

  private static double[] faded(int length, int fade) {
    double[] samples = new double[length];
    Arrays.fill(samples, 1);
    Fade.ends(samples, fade);
    return samples;
  }
}
