package dev.loopgauge.cli.command;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.cli.wiring.Backends;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.job.live.Announcement;
import dev.loopgauge.job.live.Consent;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.CalibrationRun;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.rig.CalibrationDocument;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Measures a patch cable and keeps the result. */
@Command(
    sortOptions = false,
    description = "Measure a cable from --send straight to --return, and keep the result.",
    footer = {
      "",
      "For back ends that are late by the same amount at each opening: jack. It holds",
      "for this device, rate, block size and pair of channels. With --profile it is",
      "written into the profile as well."
    })
public final class CalibrateCommand implements Subcommand {
  private final Console console;
  private final Backends backends;

  @Mixin private final LiveOptions live = new LiveOptions();

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean yes;

  /** A command on a console with back ends. */
  public CalibrateCommand(Console console, Backends backends) {
    this.console = console;
    this.backends = backends;
  }

  @Override
  public Answer answer() throws Exception {
    DataFolder data = DataFolder.of(console.environment());
    Optional<Profile> kept = live.kept(data);
    Profile settings = live.settings(kept);
    ChannelPair cable = settings.patching().rig();
    SessionRequest request = live.device.request(kept, List.of(cable.send()), List.of(cable.ret()));
    AudioBackend backend = lockable(settings.backend());
    Consent consent = new Consent(console, true, yes);
    consent.requireSomebody();
    SessionInfo opened = look(backend, request);
    consent.ask(Announcement.of(opened, request.sends(), settings.plan()));
    CalibrationRun.Outcome outcome =
        new CalibrationRun(backend, request, cable, settings.plan()).run(Instant.now());
    if (outcome instanceof CalibrationRun.Outcome.Refused refused) {
      Estimate none = new Estimate.Refused(refused.findings());
      return Answer.measured(
          new MeasurementDocument("calibrate", none, Optional.empty(), List.of()));
    }
    return keep(((CalibrationRun.Outcome.Done) outcome).calibration(), kept, data);
  }

  private AudioBackend lockable(String name) {
    if (name.equals(LiveOptions.SIMULATED)) {
      throw notLocked(name);
    }
    return backends.named(name);
  }

  private SessionInfo look(AudioBackend backend, SessionRequest request) throws CaptureException {
    try (AudioSession session = backends.open(backend, live.profile, request)) {
      if (!session.info().sampleLocked()) {
        throw notLocked(backend.name());
      }
      return session.info();
    }
  }

  private static UsageException notLocked(String backend) {
    return new UsageException(
        backend + " is late by another amount at each opening: a kept calibration would not hold",
        "patch a reference, or `measure --calibrate`, which measures cable and path in one go");
  }

  private Answer keep(Calibration calibration, Optional<Profile> kept, DataFolder data)
      throws SetupException {
    List<Path> files = new ArrayList<>(List.of(data.calibrations().save(calibration)));
    if (kept.isPresent()) {
      files.add(data.profiles().replace(live.profile.get(), kept.get().with(calibration)));
    }
    return Answer.good(
        new CalibrationDocument(calibration, files.stream().map(Path::toString).toList()));
  }
}
