package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import java.util.List;
import java.util.Optional;

/**
 * One end of a session: the device and the channels that it must reach.
 *
 * @param stated what the device states about this direction
 * @param highest the highest channel that was asked for
 */
record LineEnd(SoundDevice device, Direction direction, Stated stated, int highest) {
  /**
   * Finds the device.
   *
   * @throws CaptureException when there is none of that name, or it lacks a channel
   */
  static LineEnd of(
      Devices devices, Optional<String> name, Direction direction, List<Integer> channels)
      throws CaptureException {
    SoundDevice device = devices.find(name, direction);
    int highest = channels.stream().mapToInt(Integer::intValue).max().orElseThrow();
    LineEnd end = new LineEnd(device, direction, device.stated(direction), highest);
    if (highest > end.stated().most()) {
      throw end.tooFew();
    }
    return end;
  }

  /** The channel counts worth trying, best first. */
  List<Integer> channelCounts() {
    return stated.countsFor(highest);
  }

  private CaptureException tooFew() {
    int most = stated.most();
    return new CaptureException(
        Kind.TOO_FEW_CHANNELS,
        "\"%s\" has %d %s%s; %s %d was asked for."
            .formatted(
                device.name(),
                most,
                direction.word(),
                most == 1 ? "" : "s",
                direction.word(),
                highest),
        most == 1
            ? "Take a device with two channels: a second one here would only be a copy of the first."
            : "Choose a %s from 1 to %d, or another device.".formatted(direction.word(), most));
  }
}
