package dev.loopgauge.capture.drivers;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A way to open some channels of a device.
 *
 * @param count how many are opened
 * @param mask a bit for each that is; 0 for the first ones
 * @param places where each channel that was asked for lies among those
 */
record ChannelChoice(int count, long mask, int[] places) {
  private static final ChannelChoice NONE = new ChannelChoice(0, 0, new int[0]);

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
    int[] places = channels.stream().mapToInt(Integer::intValue).toArray();
    List<ChannelChoice> choices = new ArrayList<>();
    for (int count = most + 1; count <= there; count++) {
      choices.add(new ChannelChoice(count, 0, places));
    }
    return choices;
  }

  private static ChannelChoice masked(List<Integer> channels) {
    List<Integer> sorted = channels.stream().sorted().toList();
    long mask = sorted.stream().mapToLong(channel -> 1L << channel).sum();
    int[] places =
        IntStream.range(0, channels.size()).map(i -> sorted.indexOf(channels.get(i))).toArray();
    return new ChannelChoice(channels.size(), mask, places);
  }
}
