package dev.loopgauge.capture.file;

import be.tarsos.dsp.io.TarsosDSPAudioFloatConverter;
import be.tarsos.dsp.io.TarsosDSPAudioFormat;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How one sample lies in a WAV file, lowest byte first.
 *
 * <p>Whole numbers of n bits count full scale as 2^(n-1), so that each of them up to 32 bits
 * becomes a {@code double} exactly. TarsosDSP converts the 32-bit floats, which it does exactly;
 * its whole numbers count full scale as 2^(n-1)-1, come out as {@code float} and are cut off rather
 * than rounded when read back, and its 64-bit floats lose half their digits, so those are converted
 * here.
 */
public enum WavEncoding {
  /** 16-bit whole numbers. */
  PCM_16(2, false),
  /** 24-bit whole numbers in three bytes. */
  PCM_24(3, false),
  /** 32-bit whole numbers. */
  PCM_32(4, false),
  /** 32-bit IEEE 754 floating point, full scale 1.0. */
  FLOAT_32(4, true),
  /** 64-bit IEEE 754 floating point, full scale 1.0. */
  FLOAT_64(8, true);

  private final int bytes;
  private final boolean floating;

  WavEncoding(int bytes, boolean floating) {
    this.bytes = bytes;
    this.floating = floating;
  }

  /** How many bytes a sample takes. */
  public int bytes() {
    return bytes;
  }

  /** Whether it is floating point, which holds values beyond full scale too. */
  public boolean floating() {
    return floating;
  }

  /** The samples in {@code packed}, which holds one channel and nothing between its samples. */
  double[] decode(byte[] packed) {
    double[] samples = new double[packed.length / bytes];
    decode(packed, 0, bytes, samples, 0, samples.length);
    return samples;
  }

  /**
   * The samples of one channel among others.
   *
   * @param first the byte at which the channel's first sample starts
   * @param step by how many bytes each starts later than the one before
   * @param at where in {@code target} the first goes
   */
  void decode(byte[] source, int first, int step, double[] target, int at, int count) {
    switch (this) {
      case FLOAT_32 -> decodeFloats(source, first, step, target, at, count);
      case FLOAT_64 -> {
        ByteBuffer doubles = ByteBuffer.wrap(source).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < count; i++) {
          target[at + i] = doubles.getDouble(first + i * step);
        }
      }
      default -> {
        double unit = 1 / fullScale();
        for (int i = 0; i < count; i++) {
          target[at + i] = wholeNumber(source, first + i * step) * unit;
        }
      }
    }
  }

  private void decodeFloats(
      byte[] source, int first, int step, double[] target, int at, int count) {
    ByteBuffer packed = ByteBuffer.allocate(count * bytes);
    for (int i = 0; i < count; i++) {
      packed.put(source, first + i * step, bytes);
    }
    float[] floats = tarsos().toFloatArray(packed.array(), new float[count]);
    for (int i = 0; i < count; i++) {
      target[at + i] = floats[i];
    }
  }

  /**
   * The bytes of samples that {@link #holds} accepts, rounded to the nearest step; +1.0 becomes the
   * highest whole number, one step below.
   */
  byte[] encode(double[] samples) {
    if (this == FLOAT_32) {
      float[] floats = new float[samples.length];
      for (int i = 0; i < samples.length; i++) {
        floats[i] = (float) samples[i];
      }
      return tarsos().toByteArray(floats, new byte[samples.length * bytes]);
    }
    ByteBuffer packed = ByteBuffer.allocate(samples.length * bytes).order(ByteOrder.LITTLE_ENDIAN);
    for (double sample : samples) {
      if (floating) {
        packed.putDouble(sample);
      } else {
        putWholeNumber(packed, Math.min(Math.rint(sample * fullScale()), fullScale() - 1));
      }
    }
    return packed.array();
  }

  /**
   * Whether a sample can be told in this encoding: within -1.0 to 1.0 for whole numbers, within the
   * range of a 32-bit float for both floats.
   */
  boolean holds(double sample) {
    return Math.abs(sample) <= (floating ? Float.MAX_VALUE : 1);
  }

  private double fullScale() {
    return Math.scalb(1.0, 8 * bytes - 1);
  }

  private int wholeNumber(byte[] source, int at) {
    int value = source[at + bytes - 1];
    for (int i = bytes - 2; i >= 0; i--) {
      value = value << 8 | (source[at + i] & 0xFF);
    }
    return value;
  }

  private void putWholeNumber(ByteBuffer packed, double value) {
    for (int i = 0; i < bytes; i++) {
      packed.put((byte) ((int) value >> (8 * i)));
    }
  }

  private TarsosDSPAudioFloatConverter tarsos() {
    return TarsosDSPAudioFloatConverter.getConverter(
        new TarsosDSPAudioFormat(
            TarsosDSPAudioFloatConverter.PCM_FLOAT, 1, 8 * bytes, 1, bytes, 1, false));
  }
}
