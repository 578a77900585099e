package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The drivers of this computer: on Windows ASIO, WASAPI and DirectSound, on Linux JACK, ALSA and
 * PulseAudio. Each device bears the name of its driver, such as "ASIO: Stage card".
 */
public final class DriversBackend implements AudioBackend {
  static final String NAME = "drivers";

  /** A driver may try many devices, and a network server among them. */
  private static final int LOOK_SECONDS = 20;

  private static final int OPEN_SECONDS = 20;

  private final DriverThread thread;

  /** Loaded with the first back end that asks for it. */
  private static final class Shared {
    /** One for the program: the native code takes calls from the thread that called first. */
    private static final DriverThread THREAD = new DriverThread(() -> XtDrivers.load());
  }

  /** The drivers of this computer. Nothing is loaded before the first call. */
  public DriversBackend() {
    this(Shared.THREAD);
  }

  DriversBackend(DriverThread thread) {
    this.thread = thread;
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public Availability look() {
    try {
      List<AudioDevice> devices = new ArrayList<>();
      List<String> reasons = new ArrayList<>();
      for (String driver : thread.call(LOOK_SECONDS, Drivers::names, late -> {})) {
        look(driver, devices, reasons);
      }
      return devices.isEmpty()
          ? new Availability.Unusable(
              "No driver here has a device that opens. " + String.join(" ", reasons),
              "Plug the sound card in, or start the audio server.")
          : new Availability.Usable(devices);
    } catch (CaptureException e) {
      return new Availability.Unusable(e.getMessage(), e.hint());
    }
  }

  @Override
  public AudioDevice counted(AudioDevice device) throws CaptureException {
    return device.channels().isPresent()
        ? device
        : thread
            .call(
                LOOK_SECONDS, drivers -> ChosenDevices.counted(drivers, device.name()), late -> {})
            .shown();
  }

  private void look(String driver, List<AudioDevice> devices, List<String> reasons)
      throws CaptureException {
    try {
      Listing listing = thread.call(LOOK_SECONDS, drivers -> drivers.list(driver), late -> {});
      for (DriverDevice device : listing.devices()) {
        devices.add(device.shown());
      }
    } catch (CaptureException e) {
      if (thread.hangs()) {
        throw e;
      }
      reasons.add(e.getMessage());
    }
  }

  @Override
  public Optional<String> takenAlone(SessionRequest request) {
    try {
      return thread.call(
          LOOK_SECONDS, drivers -> new ChosenDevices(drivers, request).alone(), late -> {});
    } catch (CaptureException e) {
      return Optional.empty(); // Opening says what is wrong.
    }
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    return DriverSession.start(request, () -> opened(request));
  }

  private OpenStream opened(SessionRequest request) throws CaptureException {
    BlockFlow flow = new BlockFlow();
    Started started =
        thread.call(OPEN_SECONDS, drivers -> start(drivers, request, flow), this::close);
    return OpenStream.settled(thread, started.stream(), flow, started.plan());
  }

  private record Started(DriverStream stream, StreamPlan plan) {}

  private static Started start(Drivers drivers, SessionRequest request, BlockFlow flow)
      throws CaptureException {
    StreamPlan plan = new ChosenDevices(drivers, request).plan();
    DriverStream stream = drivers.open(plan, flow);
    try {
      stream.start();
      return new Started(stream, plan);
    } catch (CaptureException | RuntimeException | Error e) {
      stream.close();
      throw e;
    }
  }

  /** A stream that opened when nobody waited for it any more. */
  private void close(Started tooLate) {
    try {
      thread.call(
          OPEN_SECONDS,
          drivers -> {
            tooLate.stream().close();
            return tooLate;
          },
          late -> {});
    } catch (CaptureException e) {
      // It hangs again, and the driver keeps what it holds until this program ends.
    }
  }
}
