package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.TimedCall;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * The operating system's own sound devices, by Java Sound.
 *
 * <p>One line of several channels is opened each way, at 24 bits where the device has them, and
 * kept flowing until the session is closed. Each opening shifts the offset between playing and
 * recording, so {@link dev.loopgauge.capture.SessionInfo#sampleLocked} is false; within one session
 * it stays the same, or the session fails.
 */
public final class JavaSoundBackend implements AudioBackend {
  static final String NAME = "java-sound";

  private static final String WHO = "The system's sound";
  private static final String HANGS_HINT =
      "See that the audio server runs, or restart it, and try again.";
  private static final TimedCall LOOK = new TimedCall(WHO, 5, HANGS_HINT);
  private static final TimedCall OPEN = new TimedCall(WHO, 15, HANGS_HINT);
  private static final long STALL_NANOS = 2_000_000_000L;

  private final Supplier<List<SoundDevice>> platform;

  /** The devices of this computer. */
  public JavaSoundBackend() {
    this(MixerDevice::all);
  }

  JavaSoundBackend(Supplier<List<SoundDevice>> platform) {
    this.platform = platform;
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public Availability look() {
    try {
      Devices devices = limited(LOOK, () -> new Devices(platform.get()), late -> {});
      return devices.all().isEmpty()
          ? new Availability.Unusable(Devices.NONE, Devices.NONE_HINT)
          : new Availability.Usable(limited(LOOK, devices::toShow, late -> {}));
    } catch (CaptureException e) {
      return new Availability.Unusable(e.getMessage(), e.hint());
    }
  }

  @Override
  public AudioDevice counted(AudioDevice device) throws CaptureException {
    return device.channels().isPresent()
        ? device
        : limited(LOOK, () -> new Devices(platform.get()).counted(device.name()), late -> {});
  }

  @Override
  public Optional<String> takenAlone(SessionRequest request) {
    try {
      return limited(LOOK, () -> new Devices(platform.get()).alone(request), late -> {});
    } catch (CaptureException e) {
      return Optional.empty(); // Opening says what is wrong.
    }
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    return limited(
        OPEN,
        () -> JavaSoundSession.start(() -> lines(request), request, STALL_NANOS),
        AudioSession::close);
  }

  /** On a thread of its own, whoever asks: a session that starts anew must not hang either. */
  private OpenLines lines(SessionRequest request) throws CaptureException {
    return limited(
        OPEN, () -> Opening.open(new Devices(platform.get()), request), JavaSoundBackend::close);
  }

  private static void close(OpenLines tooLate) {
    tooLate.output().ifPresent(PcmLine::close);
    tooLate.input().close();
  }

  private static <T> T limited(TimedCall limit, Callable<T> work, Consumer<T> tooLate)
      throws CaptureException {
    try {
      return limit.of(work, tooLate);
    } catch (RuntimeException | LinkageError e) {
      throw new CaptureException(Kind.BACKEND_UNUSABLE, WHO + " failed: " + e, HANGS_HINT);
    }
  }
}
