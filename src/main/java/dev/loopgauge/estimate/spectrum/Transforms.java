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
    return ofLength.computeIfAbsent(length, RealFft::new);
  }
}
