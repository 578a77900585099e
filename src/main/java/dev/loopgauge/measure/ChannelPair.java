package dev.loopgauge.measure;

/**
 * A send and the return that it shall arrive at.
 *
 * @param send the channel played to, counted from 1
 * @param ret the channel recorded from, counted from 1
 */
public record ChannelPair(int send, int ret) {
  /**
   * Checks the channels.
   *
   * @throws IllegalArgumentException when a channel is below 1
   */
  public ChannelPair {
    if (send < 1 || ret < 1) {
      throw new IllegalArgumentException(
          "channels count from 1: there is no send " + send + " with return " + ret);
    }
  }
}
