package dev.loopgauge.signal;

import java.util.Arrays;

/** Tells whether two channels are one: two recordings of one sound always differ in their noise. */
public final class SameSamples {
  private static final int CHUNK = 1 << 14;

  private SameSamples() {}

  /** Whether both have the same length and the same samples, and are not silent. */
  public static boolean of(Samples one, Samples other) {
    if (one.length() != other.length()) {
      return false;
    }
    double[] ofOne = new double[CHUNK];
    double[] ofOther = new double[CHUNK];
    boolean silent = true;
    for (int from = 0; from < one.length(); from += CHUNK) {
      one.copyTo(from, ofOne, 0, CHUNK);
      other.copyTo(from, ofOther, 0, CHUNK);
      if (!Arrays.equals(ofOne, ofOther)) {
        return false;
      }
      silent = silent && Arrays.stream(ofOne).allMatch(sample -> sample == 0);
    }
    return !silent;
  }
}
