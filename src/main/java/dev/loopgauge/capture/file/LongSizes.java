package dev.loopgauge.capture.file;

import java.nio.ByteBuffer;
import java.util.HashMap;
import java.util.Map;

/**
 * The sizes beyond 32 bits that an RF64 or BW64 file keeps in its {@code ds64} chunk.
 *
 * <p>Source: EBU Tech 3306, now ITU-R BS.2088. A size there counts only for a chunk whose own size
 * is 0xFFFFFFFF.
 */
final class LongSizes {
  /** The most bytes of the chunk that are read: a table of a thousand entries. */
  static final int LONGEST = 28 + 12 * 1000;

  private static final int TABLE_LENGTH_AT = 24;
  private static final int TABLE_AT = 28;
  private static final int ENTRY = 12;

  private LongSizes() {}

  /**
   * The sizes by chunk: of the whole file as {@code RIFF}, of the data, and of the chunks in the
   * table. None where the chunk is too short. A size beyond 63 bits comes out negative.
   */
  static Map<String, Long> parse(ByteBuffer ds64) {
    Map<String, Long> sizes = new HashMap<>();
    if (ds64.remaining() < TABLE_AT) {
      return sizes;
    }
    int held = (ds64.remaining() - TABLE_AT) / ENTRY;
    long entries = Math.min(held, ds64.getInt(TABLE_LENGTH_AT) & 0xFFFFFFFFL);
    for (int i = 0; i < entries; i++) {
      int at = TABLE_AT + i * ENTRY;
      sizes.put(Bytes.text(ds64, at), ds64.getLong(at + 4));
    }
    sizes.put("RIFF", ds64.getLong(0));
    sizes.put("data", ds64.getLong(8));
    return sizes;
  }
}
