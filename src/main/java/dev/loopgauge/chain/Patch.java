package dev.loopgauge.chain;

import java.util.OptionalInt;

/**
 * Where a measurement is plugged in. Channels count from 1, up to {@value #HIGHEST}.
 *
 * @param send the output that plays
 * @param returned the input that records: {@code return} in chain files
 * @param against the input that is the reference for it, where that is not the rig's own
 */
public record Patch(int send, int returned, OptionalInt against) {
  /** The highest channel accepted: beyond any sound card. */
  public static final int HIGHEST = 1024;

  /**
   * Checks the channels.
   *
   * @throws IllegalArgumentException when one is out of range
   */
  public Patch {
    check("send", send);
    check("return", returned);
    against.ifPresent(channel -> check("against", channel));
  }

  private static void check(String what, int channel) {
    if (channel < 1 || channel > HIGHEST) {
      throw new IllegalArgumentException(what + " must be 1 to " + HIGHEST + ", not " + channel);
    }
  }
}
