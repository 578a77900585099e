package dev.loopgauge.report.html;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * The text that a PNG was drawn from, kept within it as an iTXt chunk (PNG specification, third
 * edition, section 11.3.3.4, from memory), which viewers pass over.
 */
final class PictureText {
  /** The signature, and IHDR with its length, type, 13 bytes and check sum. */
  private static final int HEAD = 8 + 25;

  private static final int SIGNATURE = 8;
  private static final int AROUND = 12;

  /** The keyword and its end; not compressed, no language, no keyword translated. */
  private static final byte[] KEYWORD = "Source\0\0\0\0\0".getBytes(ISO_8859_1);

  private PictureText() {}

  /** The same picture with a text. */
  static byte[] added(String text, byte[] png) {
    byte[] utf8 = text.getBytes(UTF_8);
    byte[] typed =
        ByteBuffer.allocate(4 + KEYWORD.length + utf8.length)
            .put("iTXt".getBytes(ISO_8859_1))
            .put(KEYWORD)
            .put(utf8)
            .array();
    CRC32 sum = new CRC32();
    sum.update(typed);
    return ByteBuffer.allocate(png.length + typed.length + 8)
        .put(png, 0, HEAD)
        .putInt(typed.length - 4)
        .put(typed)
        .putInt((int) sum.getValue())
        .put(png, HEAD, png.length - HEAD)
        .array();
  }

  /** The text of a picture; empty where it has none. */
  static Optional<String> of(byte[] png) {
    ByteBuffer bytes = ByteBuffer.wrap(png);
    for (int at = SIGNATURE; at + AROUND <= png.length; at += AROUND + bytes.getInt(at)) {
      byte[] body = Arrays.copyOfRange(png, at + 8, at + 8 + bytes.getInt(at));
      if (new String(png, at + 4, 4, ISO_8859_1).equals("iTXt")
          && body.length >= KEYWORD.length
          && Arrays.equals(Arrays.copyOf(body, KEYWORD.length), KEYWORD)) {
        return Optional.of(new String(body, KEYWORD.length, body.length - KEYWORD.length, UTF_8));
      }
    }
    return Optional.empty();
  }
}
