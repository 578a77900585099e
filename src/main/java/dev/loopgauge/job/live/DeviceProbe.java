package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.report.rig.DevicesDocument.Probe;
import java.util.List;
import java.util.Optional;

/**
 * Opens a device for a moment, playing nothing, to count its channels and to see whether and how it
 * opens.
 *
 * @param device the device, its channels counted where it opens
 * @param probe what came of it
 */
public record DeviceProbe(AudioDevice device, Probe probe) {
  /** What comes of it. */
  public static DeviceProbe of(AudioBackend backend, AudioDevice listed) {
    try {
      AudioDevice counted = backend.counted(listed);
      return new DeviceProbe(counted, opened(backend, counted));
    } catch (CaptureException e) {
      return new DeviceProbe(listed, Probe.refused(e.getMessage()));
    }
  }

  /** A device that can't record isn't opened, for no session is without returns. */
  private static Probe opened(AudioBackend backend, AudioDevice device) {
    AudioDevice.Channels channels = device.channels().orElseThrow();
    if (channels.returns() == 0) {
      return Probe.refused("not tried: it only plays, and opens together with one that records");
    }
    Optional<String> name = Optional.of(device.name());
    List<Integer> sends = channels.sends() > 0 ? List.of(1) : List.of();
    SessionRequest request = new SessionRequest(name, name, sends, List.of(1), Optional.empty(), 0);
    try (AudioSession session = backend.open(request)) {
      SessionInfo info = session.info();
      return Probe.opened(info.rate().hertz(), info.bufferSamples());
    } catch (CaptureException e) {
      return Probe.refused(e.getMessage());
    }
  }
}
