package dev.loopgauge.capture.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** The bytes of an open file, read from any place, numbers lowest byte first. */
final class Bytes {
  private final FileChannel channel;
  private final long size;

  Bytes(FileChannel channel) throws IOException {
    this.channel = channel;
    this.size = channel.size();
  }

  /** How many there were when the file was opened. */
  long size() {
    return size;
  }

  /** Up to {@code most} bytes from {@code at} on, fewer where the file ends. */
  ByteBuffer read(long at, int most) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(most).order(ByteOrder.LITTLE_ENDIAN);
    read(at, bytes);
    return bytes.flip();
  }

  /** Fills a buffer from {@code at} on, as far as the file goes. */
  void read(long at, ByteBuffer target) throws IOException {
    while (target.hasRemaining() && channel.read(target, at + target.position()) >= 0) {
      // A read may give less than was asked for.
    }
  }

  /** The chunk that starts at {@code at}, or nothing where there is no chunk. */
  Optional<Chunk> chunk(long at) throws IOException {
    ByteBuffer start = read(at, Chunk.HEADER);
    if (start.remaining() < Chunk.HEADER) {
      return Optional.empty();
    }
    String id = text(start, 0);
    return isReadable(id)
        ? Optional.of(new Chunk(id, at + Chunk.HEADER, start.getInt(4) & 0xFFFFFFFFL))
        : Optional.empty();
  }

  private static boolean isReadable(String id) {
    for (int i = 0; i < id.length(); i++) {
      if (id.charAt(i) < ' ' || id.charAt(i) > '~') {
        return false;
      }
    }
    return true;
  }

  /** The four letters at {@code at}. */
  static String text(ByteBuffer bytes, int at) {
    byte[] letters = new byte[4];
    bytes.get(at, letters);
    return new String(letters, StandardCharsets.ISO_8859_1);
  }
}
