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

/** Opens a device for a moment, playing nothing, to see whether and how it opens. */
public final class DeviceProbe {
  private DeviceProbe() {}

  /**
   * What came of it; a device that can't record isn't opened, for no session is without returns.
   */
  public static Probe of(AudioBackend backend, AudioDevice device) {
    if (device.returns() == 0) {
      return Probe.refused("not tried: it only plays, and opens together with one that records");
    }
    Optional<String> name = Optional.of(device.name());
    List<Integer> sends = device.sends() > 0 ? List.of(1) : List.of();
    SessionRequest request = new SessionRequest(name, name, sends, List.of(1), Optional.empty(), 0);
    try (AudioSession session = backend.open(request)) {
      SessionInfo info = session.info();
      return Probe.opened(info.rate().hertz(), info.bufferSamples());
    } catch (CaptureException e) {
      return Probe.refused(e.getMessage());
    }
  }
}
