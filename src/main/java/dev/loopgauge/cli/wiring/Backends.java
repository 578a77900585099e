package dev.loopgauge.cli.wiring;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.capture.javasound.JavaSoundBackend;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * The back ends that reach real sound.
 *
 * @param all makes one of each
 * @param heard gets each session that is opened, and gives what is to be used for it
 */
public record Backends(Supplier<List<AudioBackend>> all, UnaryOperator<AudioSession> heard) {
  /** Back ends whose sessions are used as they are. */
  public Backends(Supplier<List<AudioBackend>> all) {
    this(all, UnaryOperator.identity());
  }

  /** The same back ends, with somebody listening to their sessions. */
  public Backends overheardBy(UnaryOperator<AudioSession> listener) {
    return new Backends(all, listener);
  }

  /** Those of this computer. */
  public static Backends ofThisComputer() {
    return new Backends(() -> List.of(new JavaSoundBackend(), new JackBackend()));
  }

  /** The back end of a name, one of {@code java-sound} and {@code jack}. */
  public AudioBackend named(String name) {
    return all.get().stream()
        .filter(backend -> backend.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Opens what was asked for.
   *
   * @throws CaptureException when that fails; where the device of a profile is missing, it says
   *     what is there instead
   */
  public AudioSession open(AudioBackend backend, Optional<String> profile, SessionRequest request)
      throws CaptureException {
    try {
      return heard.apply(backend.open(request));
    } catch (CaptureException e) {
      boolean missing =
          e.kind() == CaptureException.Kind.NO_SUCH_DEVICE
              || e.kind() == CaptureException.Kind.BACKEND_UNUSABLE;
      if (profile.isEmpty() || !missing) {
        throw e;
      }
      throw new CaptureException(
          e.kind(), "profile '" + profile.get() + "': " + e.getMessage(), e.hint() + " " + there());
    }
  }

  private String there() {
    return "What is there: "
        + all.get().stream()
            .map(backend -> backend.name() + ": " + devices(backend.look()))
            .collect(Collectors.joining("; "))
        + ".";
  }

  private static String devices(Availability seen) {
    return seen instanceof Availability.Usable usable
        ? usable.devices().stream().map(AudioDevice::name).collect(Collectors.joining(", "))
        : "nothing";
  }
}
