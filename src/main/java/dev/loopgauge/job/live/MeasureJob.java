package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.time.Instant;
import java.util.function.Consumer;

/**
 * Measures one path.
 *
 * @param request what to measure
 * @param calibrate whether to measure a patch cable first, in the same session
 * @param tellApart whether to measure again, without asking, where that tells causes apart
 */
public record MeasureJob(LiveRequest request, boolean calibrate, boolean tellApart) {
  /**
   * Measures.
   *
   * @throws CaptureException when the sound failed
   * @throws SetupException when the profile or a calibration can't be read
   * @throws ChainFormatException when the chain file is none
   * @throws UsageException when the request can't be met
   */
  public Answer run(Site site)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    return run(site, new SoFar());
  }

  /**
   * The same.
   *
   * @param soFar learns of what was measured before the devices are closed
   */
  public Answer run(Site site, SoFar soFar)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    return LiveRun.kept(site, request, soFar, this::measured);
  }

  private Answer measured(LiveRun run, Consumer<Answer> soFar)
      throws CaptureException, SetupException, IOException {
    Profile settings = run.settings();
    if (calibrate) {
      checkCalibrate(settings, run.consent());
    }
    if (tellApart && run.chosen().isEmpty()) {
      throw new UsageException(
          "expected a path's budget with --tell-apart, found none",
          "--chain FILE --path NAME say what to compare with; only then are there causes to tell"
              + " apart");
    }
    if (tellApart && !HostBlocks.isSet(run.backend()) && !run.site().person().present()) {
      throw new UsageException(
          "--tell-apart needs somebody at a terminal who sets the host's block size: %s can't"
              .formatted(run.backend().name()),
          "run it at a terminal, or use --backend jack, which sets the server's");
    }
    run.consent().requireSomebody();
    PathMeasurement path = new PathMeasurement(run, run.target(settings), "measure");
    return calibrate ? path.afterCable(Instant.now()) : path.once(tellApart, soFar);
  }

  private static void checkCalibrate(Profile settings, Consent consent) {
    if (settings.patching().reference().isPresent()) {
      throw new UsageException(
          "expected --calibrate or a reference, found both",
          "the reference is the better way: leave --calibrate out");
    }
    if (!consent.makesSound() || !consent.person().present()) {
      throw new UsageException(
          "--calibrate needs a sound card, and somebody at a terminal who patches in between",
          "use a reference instead: --reference-send and --reference-return");
    }
  }
}
