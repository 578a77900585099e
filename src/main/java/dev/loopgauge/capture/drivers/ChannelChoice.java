package dev.loopgauge.capture.drivers;

import java.util.ArrayList;
import java.util.List;

/**
 * A way to open some channels of a device.
 *
 * @param count how many are opened
 * @param mask a bit for each that is; 0 for the first ones
 * @param places where each channel that was asked for lies among those
 */
record ChannelChoice(int count, long mask, List<Integer> places) {
  private static final ChannelChoice NONE = new ChannelChoice(0, 0, List.of());

  /**
   * The ways to open channels, the closest first.
   *
   * @param channels the channels wanted, from 0
   * @param there how many the device has
   * @param masked whether the driver opens some and leaves others
   */
  static List<ChannelChoice> of(List<Integer> channels, int there, boolean masked) {
    if (channels.isEmpty()) {
      return List.of(NONE);
    }
    int most = channels.stream().mapToInt(Integer::intValue).max().orElseThrow();
    if (masked && most < Long.SIZE) {
      return List.of(masked(channels));
    }
    List<ChannelChoice> choices = new ArrayList<>();
    for (int count = most + 1; count <= there; count++) {
      choices.add(new ChannelChoice(count, 0, channels));
    }
    return choices;
  }

  private static ChannelChoice masked(List<Integer> channels) {
    List<Integer> sorted = channels.stream().sorted().toList();
    long mask = sorted.stream().mapToLong(channel -> 1L << channel).sum();
    List<Integer> places = channels.stream().map(sorted::indexOf).toList();
    return new ChannelChoice(channels.size(), mask, places);
  }
}
