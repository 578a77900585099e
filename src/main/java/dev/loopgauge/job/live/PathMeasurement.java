package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.Answer;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.ExtraMeasurement;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * One path, compared with its budget, and measured once more where that tells its possible causes
 * apart.
 *
 * @param run what was asked for
 * @param target what is measured
 * @param command what the document says measured it
 */
record PathMeasurement(LiveRun run, LiveTarget target, String command) {
  /**
   * Measures once. What it came to is told before the session is closed, which may take longer than
   * to read the take.
   *
   * @param tellApart whether to set the host to another block size and measure again without asking
   * @param soFar is told what the first measurement came to
   */
  Answer once(boolean tellApart, Consumer<Answer> soFar)
      throws CaptureException, SetupException, IOException {
    Estimate estimate;
    Optional<Comparison> comparison;
    Answer first;
    List<String> notes = new ArrayList<>(run.elsewhere().stream().toList());
    Consent consent = opening();
    try (AudioSession session = target.open()) {
      LiveReading reading = target.reading(session, consent).playingAgain();
      Repeatable way = reading.repeatable(target.store());
      consent.ask(reading.announcement());
      estimate = way.take();
      notes.addAll(way.notes());
      comparison = run.chosen(session.info()).flatMap(path -> path.compare(estimate));
      first = answer(estimate, comparison, notes);
      soFar.accept(first);
    }
    return isToldApart(comparison, tellApart)
        ? answer(estimate, Optional.of(toldApart(comparison.get())), notes)
        : first;
  }

  private boolean isToldApart(Optional<Comparison> comparison, boolean tellApart)
      throws IOException {
    Optional<Integer> size = comparison.flatMap(PathMeasurement::tellingSize);
    if (tellApart
        && size.isEmpty()
        && comparison.filter(c -> !c.explanations().isEmpty()).isPresent()) {
      run.consent()
          .say("No other block size tells the possible causes apart: nothing was measured again.");
    }
    return size.isPresent() && (tellApart || run.consent().wantsAnother(size.get()));
  }

  /** Measures a patch cable first, and takes its delay off. */
  Answer afterCable(Instant now) throws CaptureException, IOException {
    Consent consent = opening();
    try (AudioSession session = target.open()) {
      Estimate estimate = target.reading(session, consent).playingAgain().afterCable(now);
      Optional<Comparison> comparison =
          run.chosen(session.info()).flatMap(path -> path.compare(estimate));
      return answer(estimate, comparison, run.elsewhere().stream().toList());
    }
  }

  private Consent opening() throws IOException {
    return target.opening(run.consent(), Playing.MOST_SPARE, "");
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
    try (HostBlocks blocks = HostBlocks.of(run)) {
      blocks.warning().ifPresent(run.consent()::say);
      int size = tellingSize(comparison).orElseThrow();
      try (AudioSession session = target.openOn(blocks.set(size))) {
        Estimate again =
            target.reading(session, run.consent().agreed()).repeatable(target.store()).take();
        if (again instanceof Estimate.Found found) {
          return comparison.toldApart(found.measurement());
        }
        run.consent().say("At a block of " + size + " there was no trustworthy reading.");
        return comparison;
      }
    }
  }

  private Answer answer(Estimate estimate, Optional<Comparison> comparison, List<String> notes) {
    Optional<HostCheck> check = run.request().reported().check(estimate);
    JudgedReading reading =
        run.chosen()
            .map(path -> path.judge(estimate, comparison, check))
            .orElseGet(() -> JudgedReading.ofNoPath(estimate, check));
    return Answer.measured(MeasurementDocument.of(command, reading, notes));
  }
}
