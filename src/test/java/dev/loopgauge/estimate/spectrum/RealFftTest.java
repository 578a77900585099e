package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.junit.jupiter.api.Test;

class RealFftTest {
  private static double[] noise(int length) {
    return new SplittableRandom(7).doubles(length, -1, 1).toArray();
  }

  /** Source: Apache Commons Math 3.6.1, an independent implementation. */
  @Test
  void agreesWithAnotherLibrary() {
    double[] x = noise(1024);
    Complex[] expected =
        new FastFourierTransformer(DftNormalization.STANDARD).transform(x, TransformType.FORWARD);
    double[] packed = x.clone();
    new RealFft(1024).forward(packed);
    assertEquals(expected[0].getReal(), packed[0], 1e-11);
    assertEquals(expected[512].getReal(), packed[1], 1e-11);
    for (int k = 1; k < 512; k++) {
      assertEquals(expected[k].getReal(), packed[2 * k], 1e-11, "bin " + k);
      assertEquals(expected[k].getImaginary(), packed[2 * k + 1], 1e-11, "bin " + k);
    }
  }

  @Test
  void inverseGivesTheSignalBack() {
    double[] x = noise(4096);
    double[] there = x.clone();
    RealFft fft = new RealFft(4096);
    fft.forward(there);
    fft.inverse(there);
    for (int i = 0; i < x.length; i++) {
      assertEquals(x[i], there[i], 1e-13);
    }
  }

  @Test
  void takesThePowerOfTwoAbove() {
    assertEquals(2, RealFft.lengthFor(1));
    assertEquals(1024, RealFft.lengthFor(1024));
    assertEquals(2048, RealFft.lengthFor(1025));
    assertThrows(IllegalArgumentException.class, () -> new RealFft(1000));
  }
}
