package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
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

  private static final String NEITHER = "play to or to record from";

  Devices {
    all = List.copyOf(all);
  }

  /** The devices for people to choose from. */
  List<AudioDevice> toShow() {
    return all.stream()
        .map(
            device ->
                device.alone()
                    ? AudioDevice.uncounted(device.name(), RateSource.DEVICE, false)
                    : counted(device))
        .toList();
  }

  /**
   * A device with its channels counted.
   *
   * @throws CaptureException when it is gone, or says nothing while another program has it
   */
  AudioDevice counted(String name) throws CaptureException {
    AudioDevice counted =
        all.stream()
            .filter(device -> device.name().equals(name))
            .findFirst()
            .map(Devices::counted)
            .orElseThrow(() -> doesNotOpen(name, NEITHER));
    if (counted.channels().filter(new AudioDevice.Channels(0, 0)::equals).isPresent()) {
      throw doesNotOpen(name, NEITHER);
    }
    return counted;
  }

  private static CaptureException doesNotOpen(String name, String purpose) {
    return new CaptureException(
        Kind.BUSY,
        "\"%s\" doesn't open as a device to %s.".formatted(name, purpose),
        "Close other programs that use it, or plug it in, and try again.");
  }

  private static AudioDevice counted(SoundDevice device) {
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
    List<SoundDevice> able = able(direction);
    if (name.isEmpty()) {
      return able.stream()
          .filter(device -> device.has(direction))
          .findFirst()
          .orElseThrow(() -> none(direction));
    }
    SoundDevice found = named(name.get(), able, direction);
    if (!found.has(direction)) {
      throw doesNotOpen(found.name(), direction.purpose());
    }
    return found;
  }

  /**
   * The device that a request takes from other programs, if it does; nothing that they may hold is
   * opened for it.
   *
   * @throws CaptureException when a device isn't there
   */
  Optional<String> alone(SessionRequest request) throws CaptureException {
    Optional<String> played =
        request.sends().isEmpty() ? Optional.empty() : alone(request.output(), Direction.SEND);
    return played.isPresent() ? played : alone(request.input(), Direction.RETURN);
  }

  private Optional<String> alone(Optional<String> name, Direction direction)
      throws CaptureException {
    List<SoundDevice> able = able(direction);
    SoundDevice chosen = name.isEmpty() ? able.get(0) : named(name.get(), able, direction);
    return Optional.of(chosen).filter(SoundDevice::alone).map(SoundDevice::name);
  }

  /** Those that have the direction, and behind them those to be had alone, which may. */
  private List<SoundDevice> able(Direction direction) throws CaptureException {
    List<SoundDevice> able =
        all.stream()
            .filter(device -> device.alone() || device.has(direction))
            .sorted(Comparator.comparing(SoundDevice::alone))
            .toList();
    if (able.isEmpty()) {
      throw none(direction);
    }
    return able;
  }

  private CaptureException none(Direction direction) {
    String text =
        all.isEmpty() ? NONE : "No device here can be used to " + direction.purpose() + ".";
    return new CaptureException(Kind.BACKEND_UNUSABLE, text, NONE_HINT);
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
