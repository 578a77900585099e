package dev.loopgauge.capture.file;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/** WAV files put together by hand, true ones and others. */
public final class WavBytes {
  /** Two bytes of tag go before these in a sub-format. */
  private static final byte[] SUB_FORMAT_TAIL =
      HexFormat.of().parseHex("000000001000800000aa00389b71");

  private WavBytes() {}

  /** A RIFF file whose size field is right. */
  public static byte[] riff(byte[]... chunks) {
    byte[] body = join(chunks);
    return join(ascii("RIFF"), le(4, body.length + 4L), ascii("WAVE"), body);
  }

  /** A chunk whose size field is right, padded to even length. */
  public static byte[] chunk(String id, byte... contents) {
    return join(ascii(id), le(4, contents.length), contents, new byte[contents.length % 2]);
  }

  /** A plain format chunk. */
  public static byte[] fmt(int tag, int channels, long rate, int bits) {
    return chunk("fmt ", plain(tag, channels, rate, bits));
  }

  /** An extensible format chunk. */
  public static byte[] extensible(int tag, int channels, long rate, int bits, int validBits) {
    byte[] extension = join(le(2, 22), le(2, validBits), le(4, 0), le(2, tag), SUB_FORMAT_TAIL);
    return chunk("fmt ", join(plain(0xFFFE, channels, rate, bits), extension));
  }

  public static byte[] plain(int tag, int channels, long rate, int bits) {
    int frameBytes = channels * bits / 8;
    return join(
        le(2, tag),
        le(2, channels),
        le(4, rate),
        le(4, rate * frameBytes),
        le(2, frameBytes),
        le(2, bits));
  }

  /** Whole numbers of {@code bytes} bytes each, lowest byte first. */
  public static byte[] le(int bytes, long... numbers) {
    byte[] packed = new byte[bytes * numbers.length];
    for (int i = 0; i < packed.length; i++) {
      packed[i] = (byte) (numbers[i / bytes] >> (8 * (i % bytes)));
    }
    return packed;
  }

  public static byte[] floats(float... values) {
    ByteBuffer packed = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
    packed.asFloatBuffer().put(values);
    return packed.array();
  }

  public static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  public static byte[] join(byte[]... parts) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      joined.writeBytes(part);
    }
    return joined.toByteArray();
  }
}
