package dev.loopgauge.journal;

/**
 * Where and as which one an entry was kept first.
 *
 * @param origin the journal that kept it first, by its own name of 32 hexadecimal digits
 * @param number which entry of that journal it is, counted from 1
 * @param link SHA-256 that chains it to the entry before it there
 * @param orderMs its place in time, in ms since 1970: when it was measured, or that of the entry
 *     before it where the clock ran back since
 */
public record Keeping(String origin, long number, String link, long orderMs) {
  /**
   * Checks the number.
   *
   * @throws IllegalArgumentException when it is below 1
   */
  public Keeping {
    if (number < 1) {
      throw new IllegalArgumentException("entries are numbered from 1 on, not from " + number);
    }
  }

  /**
   * What chains an entry to the one before it.
   *
   * @param before the link of that one; the name of the origin before the first
   * @param digest the entry's own digest
   */
  public static String link(String before, String digest) {
    return Sha256.of(before + " " + digest);
  }
}
