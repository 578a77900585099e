package dev.loopgauge.plan;

import dev.loopgauge.signal.Latency;

/**
 * A path that two mixes want delayed by different amounts.
 *
 * @param path the path
 * @param larger the mix that wants the larger delay
 * @param add what it wants
 * @param smaller the other mix
 * @param otherAdd what that wants
 */
public record Conflict(String path, String larger, Latency add, String smaller, Latency otherAdd) {
  /** What the rest of the other mix would need on top, if both got the larger delay. */
  public Latency difference() {
    return add.minus(otherAdd);
  }
}
