package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The devices that the platform lists.
 *
 * @param all in the platform's order, its default first
 */
record Devices(List<SoundDevice> all) {
  /** Why there is no device, one sentence. */
  static final String NONE = "The system lists no sound device to play to or record from.";

  /** What to do when there is no device, one sentence. */
  static final String NONE_HINT =
      "Connect a sound card; on Linux give ALSA a default device (for one that goes through an audio"
          + " server, install libasound2-plugins), or use --backend jack.";

  Devices {
    all = List.copyOf(all);
  }

  /** The devices for people to choose from. */
  List<AudioDevice> toShow() {
    return all.stream().map(Devices::toShow).toList();
  }

  private static AudioDevice toShow(SoundDevice device) {
    Stated sends = device.stated(Direction.SEND);
    Stated returns = device.stated(Direction.RETURN);
    TreeSet<Integer> rates = new TreeSet<>();
    sends.rates().forEach(rate -> rates.add(rate.hertz()));
    returns.rates().forEach(rate -> rates.add(rate.hertz()));
    return new AudioDevice(
        device.name(),
        sends.shown(),
        returns.shown(),
        rates.stream().map(SampleRate::new).toList(),
        source(sends, returns));
  }

  private static RateSource source(Stated sends, Stated returns) {
    return Stream.of(sends, returns)
        .filter(stated -> stated.most() > 0)
        .map(Stated::source)
        .max(Comparator.naturalOrder())
        .orElse(RateSource.ANY);
  }

  /**
   * The device of that name, or the one whose name alone starts with it in upper or lower case; the
   * first that has the direction when no name is given.
   *
   * @throws CaptureException when there is none, or more than one
   */
  SoundDevice find(Optional<String> name, Direction direction) throws CaptureException {
    List<SoundDevice> able = all.stream().filter(device -> device.has(direction)).toList();
    if (able.isEmpty()) {
      String text =
          all.isEmpty() ? NONE : "No device here can be used to " + direction.purpose() + ".";
      throw new CaptureException(Kind.BACKEND_UNUSABLE, text, NONE_HINT);
    }
    return name.isEmpty() ? able.get(0) : named(name.get(), able, direction);
  }

  private static SoundDevice named(String name, List<SoundDevice> able, Direction direction)
      throws CaptureException {
    for (SoundDevice device : able) {
      if (device.name().equals(name)) {
        return device;
      }
    }
    String start = name.toLowerCase(Locale.ROOT);
    List<SoundDevice> close =
        able.stream().filter(d -> d.name().toLowerCase(Locale.ROOT).startsWith(start)).toList();
    if (close.size() == 1) {
      return close.get(0);
    }
    String found = close.isEmpty() ? "No device is called" : close.size() + " names begin with";
    throw new CaptureException(
        Kind.NO_SUCH_DEVICE,
        "%s \"%s\"; to %s there is: %s.".formatted(found, name, direction.purpose(), names(able)),
        "Give one of these names, or as much of its beginning as no other shares.");
  }

  private static String names(List<SoundDevice> devices) {
    return devices.stream()
        .map(SoundDevice::name)
        .collect(Collectors.joining("\", \"", "\"", "\""));
  }
}
