package dev.loopgauge.fuzz;

import java.util.Arrays;
import java.util.SplittableRandom;

/** Bytes changed, lost, doubled or cut off, by a seed. */
record Mutation(SplittableRandom random) {
  byte[] of(byte[] whole) {
    byte[] bytes = whole.clone();
    for (int times = 1 + random.nextInt(3); times > 0 && bytes.length > 1; times--) {
      bytes = once(bytes);
    }
    return bytes;
  }

  private byte[] once(byte[] bytes) {
    int at = random.nextInt(bytes.length);
    int end = Math.min(bytes.length, at + 1 + random.nextInt(300));
    byte[] head = Arrays.copyOf(bytes, at);
    return switch (random.nextInt(5)) {
      case 0 -> changed(bytes, at, (byte) (bytes[at] ^ (1 << random.nextInt(8))));
      case 1 -> changed(bytes, at, (byte) random.nextInt(256));
      case 2 -> joined(head, Arrays.copyOfRange(bytes, end, bytes.length));
      case 3 -> joined(Arrays.copyOf(bytes, end), Arrays.copyOfRange(bytes, at, bytes.length));
      default -> head;
    };
  }

  private static byte[] changed(byte[] bytes, int at, byte value) {
    byte[] changed = bytes.clone();
    changed[at] = value;
    return changed;
  }

  private static byte[] joined(byte[] head, byte[] tail) {
    byte[] joined = Arrays.copyOf(head, head.length + tail.length);
    System.arraycopy(tail, 0, joined, head.length, tail.length);
    return joined;
  }
}
