package dev.loopgauge.estimate.spectrum;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One transform of each length that is asked for, with the arrays that were borrowed from it. Safe
 * to share between threads.
 */
public final class Transforms {
  private final Map<Integer, RealFft> ofLength = new ConcurrentHashMap<>();

  /** The transform of a length, a power of two. */
  public RealFft ofLength(int length) {
    RealFft made = ofLength.get(length);
    if (made != null) {
      return made;
    }
    RealFft fresh = new RealFft(length);
    RealFft first = ofLength.putIfAbsent(length, fresh);
    return first == null ? fresh : first;
  }
}
