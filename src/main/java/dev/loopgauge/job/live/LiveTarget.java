package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.setup.CalibrationStore;
import dev.loopgauge.setup.Profile;
import java.io.IOException;
import java.util.Optional;

/**
 * What is measured again and again, each time through a session of its own.
 *
 * @param audio opens the sessions
 * @param backend the back end to use
 * @param profile the name of the profile under the settings, where there is one
 * @param settings what to measure
 * @param arrival which arrival is measured where there are several
 * @param store where calibrations are kept
 */
record LiveTarget(
    AudioSystem audio,
    AudioBackend backend,
    Optional<String> profile,
    Profile settings,
    ArrivalChoice arrival,
    CalibrationStore store) {
  /** The same with something else patched. */
  LiveTarget with(Patching patching) {
    return new LiveTarget(audio, backend, profile, settings.with(patching), arrival, store);
  }

  /** The same with what is played, or how, set otherwise. */
  LiveTarget with(Profile other) {
    return new LiveTarget(audio, backend, profile, other, arrival, store);
  }

  /**
   * Opens a session of a back end whose host was set to another block size, to be closed by the
   * caller. Where the block size is the server's own, the buffer is that and no longer a choice.
   */
  AudioSession openOn(AudioBackend other) throws CaptureException {
    SessionRequest asked = settings.request();
    return audio.open(
        other, profile, other instanceof BlockSizeServer ? asked.ofAnyBuffer() : asked);
  }

  /** Opens a session, to be closed by the caller. */
  AudioSession open() throws CaptureException {
    return audio.open(backend, profile, settings.request());
  }

  /**
   * Asks before the device is opened where that takes it from other programs; else nobody yet.
   *
   * @param spare how many turns more may be played
   * @param more what else to say of what is played, or nothing
   */
  Consent opening(Consent consent, int spare, String more) throws IOException {
    return consent.opening(
        backend,
        settings.request(),
        expected ->
            Announcement.of(expected, settings.patching().sends(), settings.plan(), spare) + more);
  }

  /** What is read through an open session. */
  LiveReading reading(AudioSession session, Consent consent) {
    return new LiveReading(session, settings, arrival, consent, Playing.ONCE);
  }
}
