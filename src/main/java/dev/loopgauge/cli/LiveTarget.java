package dev.loopgauge.cli;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.CalibrationStore;
import dev.loopgauge.setup.Profile;
import java.util.Optional;

/**
 * What is measured again and again, each time through a session of its own.
 *
 * @param backends opens the sessions
 * @param backend the back end to use
 * @param settings what to measure
 * @param arrival which arrival is measured where there are several
 * @param store where calibrations are kept
 */
record LiveTarget(
    Backends backends,
    AudioBackend backend,
    Profile settings,
    ArrivalChoice arrival,
    CalibrationStore store) {
  /** The same with something else patched. */
  LiveTarget with(Patching patching) {
    return new LiveTarget(backends, backend, settings.with(patching), arrival, store);
  }

  /** Opens a session, to be closed by the caller. */
  AudioSession open() throws CaptureException {
    return backends.open(backend, Optional.empty(), settings.request());
  }

  /** What is read through an open session. */
  LiveReading reading(AudioSession session, Consent consent) {
    return new LiveReading(session, settings, arrival, consent);
  }
}
