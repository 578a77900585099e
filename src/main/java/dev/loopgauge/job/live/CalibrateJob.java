package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.CalibrationRun;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.rig.CalibrationDocument;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Measures a patch cable in the place of the rig and keeps the result: the sound card's own delay,
 * or, beside a reference, the skew of the two pairs of channels.
 *
 * @param live what to play and record, and where
 * @param rig what is wrong with the built-in rig, where that is asked
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record CalibrateJob(LiveChoice live, RigChoice rig, boolean agreed) {
  /**
   * Measures the cable, and writes what it found into the data folder and the profile.
   *
   * @throws CaptureException when the sound failed
   * @throws UsageException when a calibration of this back end would be wrong the next time
   */
  public Answer run(Site site) throws CaptureException, SetupException, IOException {
    Optional<Profile> kept = live.kept(site.data());
    Profile settings = live.settings(kept, Optional.empty());
    Patching patching = settings.patching();
    SessionRequest request = live.device().request(kept, patching.sends(), patching.returns());
    AudioBackend backend = backend(site, settings);
    Consent asked = Consent.of(site.person(), backend, agreed);
    asked.requireSomebody();
    Consent consent =
        asked.opening(
            backend,
            request,
            info -> Announcement.of(info, request.sends(), settings.plan(), Playing.MOST_SPARE));
    SessionInfo opened = look(site, backend, request, patching);
    consent.ask(Announcement.of(opened, request.sends(), settings.plan(), Playing.MOST_SPARE));
    CalibrationRun.Outcome outcome =
        new CalibrationRun(backend, request, patching, settings.plan()).run(Instant.now());
    if (outcome instanceof CalibrationRun.Outcome.Refused refused) {
      Estimate none = new Estimate.Refused(refused.findings());
      return Answer.measured(
          MeasurementDocument.of(
              "calibrate", JudgedReading.ofNoPath(none, Optional.empty()), List.of()));
    }
    return keep(((CalibrationRun.Outcome.Done) outcome).calibration(), kept, site.data());
  }

  private AudioBackend backend(Site site, Profile settings) {
    if (settings.backend().equals(BuiltInRig.NAME) && settings.patching().reference().isEmpty()) {
      throw notLocked();
    }
    return rig.backend(
        site.audio(),
        settings.backend(),
        Optional.of(StraightCable.inPlaceOf(settings)),
        Optional.of(settings.patching().rig()));
  }

  /** A card's delay must be the same at each opening; a skew is, whatever the card does. */
  private SessionInfo look(
      Site site, AudioBackend backend, SessionRequest request, Patching patching)
      throws CaptureException {
    try (AudioSession session = site.audio().open(backend, live.profile(), request)) {
      if (patching.reference().isEmpty() && !session.info().sampleLocked()) {
        throw notLocked();
      }
      return session.info();
    }
  }

  private static UsageException notLocked() {
    return new UsageException(
        "This back end's delay changes every time it opens, so a saved calibration would be wrong.",
        "patch a reference, or `measure --calibrate`, which measures cable and path in one go");
  }

  private Answer keep(Calibration calibration, Optional<Profile> kept, DataFolder data)
      throws SetupException {
    List<Path> files = new ArrayList<>(List.of(data.calibrations().save(calibration)));
    if (kept.isPresent()) {
      files.add(
          data.profiles().replace(live.profile().orElseThrow(), kept.get().with(calibration)));
    }
    return Answer.good(CalibrationDocument.of(calibration, files));
  }
}
