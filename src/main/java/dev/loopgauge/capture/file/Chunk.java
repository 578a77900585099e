package dev.loopgauge.capture.file;

/**
 * A piece of a RIFF file.
 *
 * @param id its four letters
 * @param start the byte at which its contents start
 * @param size how many bytes its contents take
 */
record Chunk(String id, long start, long size) {
  /** How many bytes letters and size take. */
  static final int HEADER = 8;

  /** The size that says: too long for 32 bits, or not known. */
  static final long UNSTATED = 0xFFFFFFFFL;

  /** The byte at which the next chunk starts: contents of odd length are followed by a pad byte. */
  long next() {
    return start + size + (size & 1);
  }
}
