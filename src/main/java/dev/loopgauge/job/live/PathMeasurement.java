package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.ExtraMeasurement;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * {@code measure}: one path, held against its budget, and measured once more where that tells its
 * possible causes apart.
 *
 * @param target what is measured
 * @param chosen the path of the budget, where one was named
 * @param host what was said to be reported
 * @param rig makes the built-in rig
 * @param consent asked before each sound
 */
public record PathMeasurement(
    LiveTarget target,
    Optional<ChosenPath> chosen,
    HostCheckOptions host,
    RigOptions rig,
    Consent consent) {
  /**
   * Measures once.
   *
   * @param tellApart whether to set the host to another block size and measure again without asking
   */
  public Answer once(boolean tellApart) throws CaptureException, SetupException, IOException {
    Estimate estimate;
    try (AudioSession session = target.open()) {
      estimate = target.reading(session, consent).take(target.store());
    }
    Optional<Comparison> comparison = chosen.flatMap(path -> path.compare(estimate));
    Optional<Integer> size = comparison.flatMap(PathMeasurement::tellingSize);
    boolean again = size.isPresent() && (tellApart || consent.wantsAnother(size.get()));
    return answer(estimate, again ? Optional.of(toldApart(comparison.get())) : comparison);
  }

  /** Measures a patch cable first, and takes its delay off. */
  public Answer afterCable(Instant now) throws CaptureException, IOException {
    try (AudioSession session = target.open()) {
      Estimate estimate = target.reading(session, consent).afterCable(now);
      return answer(estimate, chosen.flatMap(path -> path.compare(estimate)));
    }
  }

  private static Optional<Integer> tellingSize(Comparison comparison) {
    return comparison
        .tellApart()
        .map(ExtraMeasurement::blockSize)
        .filter(size -> size.isPresent())
        .map(size -> size.getAsInt());
  }

  private Comparison toldApart(Comparison comparison)
      throws CaptureException, SetupException, IOException {
    try (HostBlocks blocks = HostBlocks.of(target.backend(), rig, chosen, consent)) {
      blocks.warning().ifPresent(consent::say);
      int size = tellingSize(comparison).orElseThrow();
      try (AudioSession session = target.openOn(blocks.set(size))) {
        Estimate again =
            target.reading(session, consent.agreed()).repeatable(target.store()).take();
        if (again instanceof Estimate.Found found) {
          return comparison.toldApart(found.measurement());
        }
        consent.say("At a block of " + size + " there was no trustworthy reading.");
        return comparison;
      }
    }
  }

  private Answer answer(Estimate estimate, Optional<Comparison> comparison) {
    return Answer.measured(
        new MeasurementDocument("measure", estimate, comparison, host.check(estimate), List.of()));
  }
}
