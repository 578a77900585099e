package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which channels of which devices to open.
 *
 * @param output where to play; may be the same as {@code input}, and is not used without sends
 * @param input where to record
 * @param sends the channels to play to
 * @param returns the channels to record from
 * @param rate the rate asked for
 * @param bufferSamples the buffer asked for, 0 for the device's own
 */
record StreamPlan(
    DriverDevice output,
    DriverDevice input,
    Ports sends,
    Ports returns,
    Optional<SampleRate> rate,
    int bufferSamples) {
  /**
   * The channels that were asked for.
   *
   * @throws CaptureException with {@code TOO_FEW_CHANNELS}
   */
  static StreamPlan of(SessionRequest request, DriverDevice output, DriverDevice input)
      throws CaptureException {
    check("send", request.sends(), output.sends(), output);
    check("return", request.returns(), input.returns(), input);
    for (DriverDevice device :
        request.sends().isEmpty() ? List.of(input) : List.of(output, input)) {
      check(request.rate(), device);
    }
    return new StreamPlan(
        output,
        input,
        output.sends().only(request.sends()),
        input.returns().only(request.returns()),
        request.rate(),
        request.bufferSamples());
  }

  private static void check(String kind, List<Integer> asked, Ports there, DriverDevice device)
      throws CaptureException {
    for (int channel : asked) {
      if (channel > there.count()) {
        throw new CaptureException(
            CaptureException.Kind.TOO_FEW_CHANNELS,
            "There is no %s %d: \"%s\" has %d %s%s."
                .formatted(
                    kind,
                    channel,
                    device.fullName(),
                    there.count(),
                    kind,
                    there.count() == 1 ? "" : "s"),
            "Choose a lower %s, or another device.".formatted(kind));
      }
    }
  }

  private static void check(Optional<SampleRate> asked, DriverDevice device)
      throws CaptureException {
    if (asked.isPresent() && !device.own().isEmpty() && !device.own().contains(asked.get())) {
      String rates =
          device.own().stream()
              .map(rate -> String.valueOf(rate.hertz()))
              .collect(Collectors.joining(", "));
      throw new CaptureException(
          CaptureException.Kind.UNSUPPORTED_FORMAT,
          "\"%s\" doesn't run at %d Hz; it runs at %s Hz."
              .formatted(device.fullName(), asked.get().hertz(), rates),
          "Leave the sample rate out, or set the card or the server to this one.");
    }
  }

  /** Whether one stream of one device does it. */
  boolean isOneDevice() {
    return sends.count() == 0 || isSampleLocked();
  }

  /** Whether all of it runs in one callback, whose blocks are equally long. */
  boolean isSampleLocked() {
    return input.duplex() && (sends.count() == 0 || sends.id().equals(returns.id()));
  }

  /** A device that is nobody else's while it is open; empty where there is none. */
  Optional<DriverDevice> alone() {
    return Stream.of(output, input).filter(DriverDevice::alone).findFirst();
  }

  /** What the session says of itself once it has opened. */
  SessionInfo info(SampleRate opened, int frames) {
    SessionInfo shared =
        new SessionInfo(
            DriversBackend.NAME,
            output.fullName(),
            input.fullName(),
            opened,
            frames,
            isSampleLocked(),
            source(),
            BlockFlow.BUFFERS_ON_THE_WAY * frames);
    return alone().isPresent() ? shared.takenAlone() : shared;
  }

  /** The less sure of both. */
  private RateSource source() {
    return output.rateSource().compareTo(input.rateSource()) > 0
        ? output.rateSource()
        : input.rateSource();
  }
}
