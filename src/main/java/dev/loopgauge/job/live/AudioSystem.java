package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * The ways to play and record that a job may use.
 *
 * @param real makes one of each back end that reaches real sound
 * @param rig makes the built-in rig
 * @param tap gets each session that is opened, and gives what is to be used for it
 */
public record AudioSystem(Supplier<List<AudioBackend>> real, BuiltInRig rig, Tap tap) {
  /** Listens in on sessions. */
  public interface Tap {
    /** What is to be used for a session that was opened as requested. */
    AudioSession on(AudioSession session, SessionRequest request);
  }

  /** Sessions are used as they are. */
  public AudioSystem(Supplier<List<AudioBackend>> real, BuiltInRig rig) {
    this(real, rig, (session, request) -> session);
  }

  /** The same with every session going through another tap as well. */
  public AudioSystem tappedBy(Tap next) {
    return new AudioSystem(
        real, rig, (session, request) -> next.on(tap.on(session, request), request));
  }

  /** The back end of a name, one of {@code java-sound}, {@code jack} and {@code drivers}. */
  public AudioBackend named(String name) {
    return real.get().stream()
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
  AudioSession open(AudioBackend backend, Optional<String> profile, SessionRequest request)
      throws CaptureException {
    try {
      return tap.on(backend.open(request), request);
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
        + real.get().stream()
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
