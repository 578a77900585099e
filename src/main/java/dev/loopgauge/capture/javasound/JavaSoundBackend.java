package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.SessionRequest;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
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

  private static final int LOOK_SECONDS = 5;
  private static final int OPEN_SECONDS = 15;
  private static final long STALL_NANOS = 2_000_000_000L;
  private static final String HANGS_HINT =
      "See that the audio server runs, or restart it, and try again.";

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
      Devices devices = TimeLimit.run(() -> new Devices(platform.get()), LOOK_SECONDS, late -> {});
      return devices.all().isEmpty()
          ? new Availability.Unusable(Devices.NONE, Devices.NONE_HINT)
          : new Availability.Usable(devices.toShow());
    } catch (TimeoutException e) {
      return new Availability.Unusable(silent(LOOK_SECONDS), HANGS_HINT);
    } catch (ExecutionException e) {
      return new Availability.Unusable(broken(e.getCause()), HANGS_HINT);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Availability.Unusable("Looking for devices was cancelled.", "Try again.");
    }
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    return limited(
        () -> JavaSoundSession.start(() -> lines(request), request, STALL_NANOS),
        AudioSession::close);
  }

  /** On a thread of its own, whoever asks: a session that starts anew must not hang either. */
  private OpenLines lines(SessionRequest request) throws CaptureException {
    return limited(
        () -> Opening.open(new Devices(platform.get()), request), JavaSoundBackend::close);
  }

  private static void close(OpenLines tooLate) {
    tooLate.output().ifPresent(PcmLine::close);
    tooLate.input().close();
  }

  private static <T> T limited(Callable<T> work, Consumer<T> tooLate) throws CaptureException {
    try {
      return TimeLimit.run(work, OPEN_SECONDS, tooLate);
    } catch (TimeoutException e) {
      throw new CaptureException(Kind.TIMED_OUT, silent(OPEN_SECONDS), HANGS_HINT);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof CaptureException reason) {
        throw reason;
      }
      throw new CaptureException(Kind.BACKEND_UNUSABLE, broken(e.getCause()), HANGS_HINT);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CaptureException(Kind.TIMED_OUT, "Opening was cancelled.", "Try again.");
    }
  }

  private static String silent(int seconds) {
    return "The system's sound did not answer within " + seconds + " s.";
  }

  private static String broken(Throwable cause) {
    return "The system's sound failed: " + cause;
  }
}
