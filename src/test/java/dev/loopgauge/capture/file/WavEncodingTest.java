package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import be.tarsos.dsp.io.TarsosDSPAudioFloatConverter;
import be.tarsos.dsp.io.TarsosDSPAudioFormat;
import be.tarsos.dsp.io.TarsosDSPAudioFormat.Encoding;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WavEncodingTest {
  @ParameterizedTest
  @EnumSource(names = {"PCM_16", "PCM_24", "PCM_32"})
  void readsWholeNumbersExactly(WavEncoding encoding) {
    long half = 1L << (8 * encoding.bytes() - 1);
    long[] steps = {0, 1, -1, 2, half / 3, -half / 3, half - 1, -half + 1, -half};

    double[] samples = encoding.decode(WavBytes.le(encoding.bytes(), steps));

    for (int i = 0; i < steps.length; i++) {
      assertEquals((double) steps[i] / half, samples[i], 0, "step " + steps[i]);
    }
  }

  @ParameterizedTest
  @EnumSource
  void givesBackEverySampleThatItWrote(WavEncoding encoding) {
    long seed = 24;
    Random random = new Random(seed);
    byte[] packed = new byte[encoding.bytes() * 10_000];
    random.nextBytes(packed);
    if (encoding.floating()) {
      packed = encoding.encode(random.doubles(10_000, -1, 1).toArray());
    }

    assertArrayEquals(packed, encoding.encode(encoding.decode(packed)), "seed " + seed);
  }

  @ParameterizedTest
  @EnumSource(names = {"PCM_16", "PCM_24", "PCM_32"})
  void writesFullScaleAsTheHighestStepAndNeverWraps(WavEncoding encoding) {
    long half = 1L << (8 * encoding.bytes() - 1);

    byte[] packed = encoding.encode(new double[] {1, -1, 0.6 / half, -0.6 / half, 0.4 / half});

    assertArrayEquals(WavBytes.le(encoding.bytes(), half - 1, -half, 1, -1, 0), packed);
  }

  @Test
  void readsFloatsBeyondFullScaleAsTheyAre() {
    double[] samples = WavEncoding.FLOAT_32.decode(WavBytes.floats(1.5f, -3e-20f));

    assertArrayEquals(new double[] {1.5f, -3e-20f}, samples, 0);
  }

  @Test
  void writesAllDigitsOfA64BitFloat() {
    double[] third = {1.0 / 3};

    assertArrayEquals(third, WavEncoding.FLOAT_64.decode(WavEncoding.FLOAT_64.encode(third)), 0);
  }

  /** Why TarsosDSP isn't asked for whole numbers: truth is the number over 2^(bits-1). */
  @Test
  void tarsosWouldReadWholeNumbersInexactly() {
    float[] sixteen = tarsos(16).toFloatArray(WavBytes.le(2, -32768), new float[1]);
    float[] twentyFour = tarsos(24).toFloatArray(WavBytes.le(3, 0x400001), new float[1]);

    assertEquals(-1.0000305, sixteen[0], 1e-7);
    assertNotEquals(0x400001 / 8388608.0, twentyFour[0]);
  }

  /** Why TarsosDSP isn't asked to write whole numbers: it cuts off where it should round. */
  @Test
  void tarsosWouldWriteWholeNumbersCutOff() {
    byte[] packed = tarsos(16).toByteArray(new float[] {0.9f / 32768}, new byte[2]);

    assertArrayEquals(WavBytes.le(2, 0), packed);
    assertArrayEquals(WavBytes.le(2, 1), WavEncoding.PCM_16.encode(new double[] {0.9 / 32768}));
  }

  private static TarsosDSPAudioFloatConverter tarsos(int bits) {
    return TarsosDSPAudioFloatConverter.getConverter(
        new TarsosDSPAudioFormat(Encoding.PCM_SIGNED, 48_000, bits, 1, bits / 8, 48_000, false));
  }
}
