package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import be.tarsos.dsp.io.TarsosDSPAudioFloatConverter;
import be.tarsos.dsp.io.TarsosDSPAudioFormat;
import java.math.BigInteger;
import java.util.Random;
import javax.sound.sampled.AudioFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The truth is two's complement, little-endian, written here by {@link BigInteger}. */
class PcmConverterTest {
  private static final long SEED = 20_260_301;

  @ParameterizedTest(name = "{0} bits, {1} channels")
  @CsvSource({"16, 1", "16, 2", "16, 8", "24, 1", "24, 2", "24, 18", "32, 1", "32, 2", "32, 5"})
  void readsWhatWasWrittenByHand(int bits, int channels) {
    Random random = new Random(SEED);
    int[] steps = new int[channels * 257];
    byte[] bytes = new byte[steps.length * bits / 8];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = random.nextInt() >> (32 - bits);
      write(steps[i], bytes, i * bits / 8, bits);
    }
    float[] samples = new float[steps.length];
    converter(bits, channels).toSamples(bytes, samples);
    for (int i = 0; i < steps.length; i++) {
      double expected = steps[i] / (double) fullScale(bits);
      String where = "seed " + SEED + ", sample " + i;
      assertEquals(expected, samples[i], Math.ulp(1f) * Math.abs(expected) + 1e-12, where);
    }
  }

  @ParameterizedTest(name = "{0} bits, {1} channels")
  @CsvSource({"16, 1", "16, 8", "24, 1", "24, 18", "32, 1", "32, 5"})
  void writesWithinOneStep(int bits, int channels) {
    Random random = new Random(SEED);
    float[] samples = new float[channels * 257];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = random.nextFloat() * 2 - 1;
    }
    byte[] bytes = new byte[samples.length * bits / 8];
    converter(bits, channels).toBytes(samples.clone(), bytes);
    // At 32 bits a float is coarser than the format: 24 bits of it hold.
    double tolerance = Math.max(1, fullScale(bits) * (double) Math.ulp(1f));
    for (int i = 0; i < samples.length; i++) {
      double expected = samples[i] * (double) fullScale(bits);
      long found = read(bytes, i * bits / 8, bits);
      assertEquals(expected, (double) found, tolerance, "seed " + SEED + ", sample " + i);
    }
  }

  @ParameterizedTest(name = "{0} bits")
  @CsvSource({"16", "24", "32"})
  void limitsWhatIsBeyondFullScale(int bits) {
    byte[] bytes = new byte[2 * bits / 8];
    converter(bits, 2).toBytes(new float[] {1.5f, -1.5f}, bytes);
    assertTrue(read(bytes, 0, bits) >= fullScale(bits) - 1, "above stays above");
    assertTrue(read(bytes, bits / 8, bits) <= -fullScale(bits) + 1, "below stays below");
  }

  /** Why samples are limited first: the library alone turns +1.5 into a negative sample. */
  @ParameterizedTest(name = "{0} bits")
  @CsvSource({"16", "24"})
  void theLibraryAloneWrapsRound(int bits) {
    byte[] bytes = new byte[bits / 8];
    TarsosDSPAudioFloatConverter.getConverter(
            new TarsosDSPAudioFormat(48_000, bits, 1, true, false))
        .toByteArray(new float[] {1.5f}, bytes);
    assertTrue(read(bytes, 0, bits) < 0);
  }

  /** The library cuts off towards zero, so both signs lose alike and nothing moves in time. */
  @Test
  void cutsOffTowardsZero() {
    byte[] bytes = new byte[4];
    converter(16, 2).toBytes(new float[] {99.9f / 32_767, -99.9f / 32_767}, bytes);
    assertArrayEquals(new byte[] {99, 0, -99, -1}, bytes);
  }

  private static PcmConverter converter(int bits, int channels) {
    return new PcmConverter(new AudioFormat(48_000, bits, channels, true, false));
  }

  private static long fullScale(int bits) {
    return (1L << (bits - 1)) - 1;
  }

  private static void write(long step, byte[] bytes, int at, int bits) {
    BigInteger value = BigInteger.valueOf(step);
    for (int i = 0; i < bits / 8; i++) {
      bytes[at + i] = value.shiftRight(8 * i).byteValue();
    }
  }

  private static long read(byte[] bytes, int at, int bits) {
    byte[] bigEndian = new byte[bits / 8];
    for (int i = 0; i < bigEndian.length; i++) {
      bigEndian[i] = bytes[at + bigEndian.length - 1 - i];
    }
    return new BigInteger(bigEndian).longValueExact();
  }
}
