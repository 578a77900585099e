package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PackedTest {
  @Test
  void taperedBinsAreThoseOfTheTaperedSignal() {
    int length = 64;
    SplittableRandom random = new SplittableRandom(8);
    double[] plain = random.doubles(length, -1, 1).toArray();
    double[] windowed = new double[length];
    for (int i = 0; i < length; i++) {
      windowed[i] = plain[i] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / length));
    }
    RealFft fft = new RealFft(length);
    fft.forward(plain);
    fft.forward(windowed);
    double[] tapered = new double[length];
    Packed.taper(plain, tapered);
    for (int i = 2; i < length; i++) {
      assertEquals(windowed[i], tapered[i], 1e-12, "place " + i);
    }
  }
}
