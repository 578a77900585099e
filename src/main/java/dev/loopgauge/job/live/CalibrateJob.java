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
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
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
 * Measures a patch cable and keeps the result.
 *
 * @param live what to play and record, and where
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record CalibrateJob(LiveChoice live, boolean agreed) {
  /**
   * Measures the cable, and writes what it found into the data folder and the profile.
   *
   * @throws CaptureException when the sound failed
   * @throws UsageException when a calibration of this back end would be wrong the next time
   */
  public Answer run(Site site) throws CaptureException, SetupException, IOException {
    Optional<Profile> kept = live.kept(site.data());
    Profile settings = live.settings(kept, Optional.empty());
    ChannelPair cable = settings.patching().rig();
    SessionRequest request =
        live.device().request(kept, List.of(cable.send()), List.of(cable.ret()));
    AudioBackend backend = lockable(site, settings.backend());
    Consent consent = Consent.of(site.person(), backend, agreed);
    consent.requireSomebody();
    SessionInfo opened = look(site, backend, request);
    consent.ask(Announcement.of(opened, request.sends(), settings.plan()));
    CalibrationRun.Outcome outcome =
        new CalibrationRun(
                backend, request, Patching.single(cable.send(), cable.ret()), settings.plan())
            .run(Instant.now());
    if (outcome instanceof CalibrationRun.Outcome.Refused refused) {
      Estimate none = new Estimate.Refused(refused.findings());
      return Answer.measured(
          MeasurementDocument.of(
              "calibrate", JudgedReading.ofNoPath(none, Optional.empty()), List.of()));
    }
    return keep(((CalibrationRun.Outcome.Done) outcome).calibration(), kept, site.data());
  }

  private static AudioBackend lockable(Site site, String name) {
    if (name.equals(BuiltInRig.NAME)) {
      throw notLocked();
    }
    return site.audio().named(name);
  }

  private SessionInfo look(Site site, AudioBackend backend, SessionRequest request)
      throws CaptureException {
    try (AudioSession session = site.audio().open(backend, live.profile(), request)) {
      if (!session.info().sampleLocked()) {
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
