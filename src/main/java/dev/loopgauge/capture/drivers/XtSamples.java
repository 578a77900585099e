package dev.loopgauge.capture.drivers;

import com.sun.jna.Pointer;
import java.util.List;
import xt.audio.Enums.XtSample;

/** Converts between a driver's samples and floats of full scale 1, a channel at a time. */
abstract class XtSamples {
  /** The kinds that can be converted, the finest first. */
  static final List<XtSample> KINDS =
      List.of(XtSample.FLOAT32, XtSample.INT32, XtSample.INT24, XtSample.INT16);

  private static final int BYTES_OF_24 = 3;
  private static final float FULL_16 = 1 << 15;
  private static final float FULL_24 = 1 << 23;
  private static final double FULL_32 = 1L << 31;

  /** For blocks of up to that many frames. */
  static XtSamples of(XtSample kind, int frames) {
    return switch (kind) {
      case FLOAT32 -> new Floats();
      case INT32 -> new Ints(frames);
      case INT24 -> new Threes(frames);
      case INT16 -> new Shorts(frames);
      case UINT8 -> throw new IllegalArgumentException("8 bits are too few");
    };
  }

  /** Reads a channel. */
  abstract void read(Pointer from, float[] to, int frames);

  /** Writes a channel; what is beyond full scale is clipped. */
  abstract void write(float[] from, Pointer to, int frames);

  private static final class Floats extends XtSamples {
    @Override
    void read(Pointer from, float[] to, int frames) {
      from.read(0, to, 0, frames);
    }

    @Override
    void write(float[] from, Pointer to, int frames) {
      to.write(0, from, 0, frames);
    }
  }

  private static final class Ints extends XtSamples {
    private final int[] raw;

    Ints(int frames) {
      raw = new int[frames];
    }

    @Override
    void read(Pointer from, float[] to, int frames) {
      from.read(0, raw, 0, frames);
      for (int i = 0; i < frames; i++) {
        to[i] = (float) (raw[i] / FULL_32);
      }
    }

    @Override
    void write(float[] from, Pointer to, int frames) {
      for (int i = 0; i < frames; i++) {
        raw[i] = (int) Math.max(Integer.MIN_VALUE, Math.min(from[i] * FULL_32, Integer.MAX_VALUE));
      }
      to.write(0, raw, 0, frames);
    }
  }

  private static final class Threes extends XtSamples {
    private final byte[] raw;

    Threes(int frames) {
      raw = new byte[frames * BYTES_OF_24];
    }

    @Override
    void read(Pointer from, float[] to, int frames) {
      from.read(0, raw, 0, frames * BYTES_OF_24);
      for (int i = 0; i < frames; i++) {
        int at = i * BYTES_OF_24;
        to[i] = ((raw[at + 2] << 16) | ((raw[at + 1] & 0xFF) << 8) | (raw[at] & 0xFF)) / FULL_24;
      }
    }

    @Override
    void write(float[] from, Pointer to, int frames) {
      for (int i = 0; i < frames; i++) {
        int value = Math.round(Math.max(-FULL_24, Math.min(from[i] * FULL_24, FULL_24 - 1)));
        raw[i * BYTES_OF_24] = (byte) value;
        raw[i * BYTES_OF_24 + 1] = (byte) (value >> 8);
        raw[i * BYTES_OF_24 + 2] = (byte) (value >> 16);
      }
      to.write(0, raw, 0, frames * BYTES_OF_24);
    }
  }

  private static final class Shorts extends XtSamples {
    private final short[] raw;

    Shorts(int frames) {
      raw = new short[frames];
    }

    @Override
    void read(Pointer from, float[] to, int frames) {
      from.read(0, raw, 0, frames);
      for (int i = 0; i < frames; i++) {
        to[i] = raw[i] / FULL_16;
      }
    }

    @Override
    void write(float[] from, Pointer to, int frames) {
      for (int i = 0; i < frames; i++) {
        raw[i] = (short) Math.round(Math.max(-FULL_16, Math.min(from[i] * FULL_16, FULL_16 - 1)));
      }
      to.write(0, raw, 0, frames);
    }
  }
}
