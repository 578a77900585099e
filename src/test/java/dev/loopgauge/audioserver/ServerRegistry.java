package dev.loopgauge.audioserver;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * jackd's list of the servers on a computer. It has eight places, and a killed server keeps its
 * place for ever, so that tests that kill servers would soon leave no room for another.
 */
final class ServerRegistry {
  private static final Path FILE = Path.of("/dev/shm/jack-shm-registry");
  private static final int MAGIC = 0x4a41434b;
  private static final int PLACES = 8;
  private static final int HEADER_BYTES = 24;
  private static final int NAME_BYTES = 260;
  private static final int PLACE_BYTES = Integer.BYTES + NAME_BYTES;

  private ServerRegistry() {}

  /** Frees the places of servers whose names begin so and that run no more. */
  static void sweep(String namePrefix) throws IOException {
    if (!Files.isWritable(FILE)) {
      return;
    }
    try (FileChannel file =
        FileChannel.open(FILE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      ByteBuffer places =
          ByteBuffer.allocate(HEADER_BYTES + PLACES * PLACE_BYTES).order(ByteOrder.nativeOrder());
      if (file.read(places, 0) != places.capacity() || places.getInt(0) != MAGIC) {
        return;
      }
      for (int at = HEADER_BYTES; at < places.capacity(); at += PLACE_BYTES) {
        if (isLeftOver(places, at, namePrefix)) {
          file.write(ByteBuffer.allocate(Integer.BYTES), at);
        }
      }
    }
  }

  /** A place is a process number, 0 where it is free, and a name after the user's number. */
  private static boolean isLeftOver(ByteBuffer places, int at, String namePrefix) {
    int pid = places.getInt(at);
    byte[] name = new byte[NAME_BYTES];
    places.get(at + Integer.BYTES, name);
    boolean ours = new String(name, StandardCharsets.US_ASCII).contains(":" + namePrefix);
    return pid != 0 && ours && ProcessHandle.of(pid).isEmpty();
  }
}
