package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Measures a program of the audio server and checks the latency that the server's graph reports for
 * it against what it really adds.
 *
 * @param run what was asked for
 * @param client the program's name on the server
 */
record ThroughProgram(LiveRun run, String client) {
  /**
   * Checks that the back end has a graph, and that the program is named in one way.
   *
   * @throws UsageException when it isn't so
   */
  static void check(LiveRun run) {
    DeviceChoice device = run.request().live().device();
    if (device.output().isPresent() || device.input().isPresent()) {
      throw new UsageException(
          "expected --through or --output and --input, found both",
          "--through names the program for both");
    }
    if (!run.backend().hasGraph()) {
      throw new UsageException(
          "--through needs an audio server whose graph reports latencies, found --backend "
              + run.backend().name(),
          "use --backend jack, or --reported-samples with what the host shows");
    }
  }

  Answer answer() throws CaptureException, IOException {
    Profile settings = run.request().live().settingsThrough(client, run.kept(), run.chosen());
    run.consent().requireSomebody();
    LiveTarget target = run.target(settings);
    try (AudioSession session = target.open()) {
      GraphSession graph = (GraphSession) session;
      LiveReading reading = target.reading(session, run.consent()).playingAgain();
      run.consent().ask(reading.announcement());
      Estimate estimate = reading.throughProgram();
      return answer(estimate, graph.stated(0, 0));
    }
  }

  private Answer answer(Estimate estimate, GraphSession.Stated stated) {
    Optional<HostCheck> check =
        run.request().reported().check(estimate).or(() -> check(estimate, stated));
    return Answer.measured(
        MeasurementDocument.of(
            "host", ChosenPath.judge(run.chosen(), estimate, check), notes(stated)));
  }

  private static Optional<HostCheck> check(Estimate estimate, GraphSession.Stated stated) {
    return estimate instanceof Estimate.Found found
        ? Optional.of(HostCheck.of(found.measurement(), ReportedDelay.ofSamples(stated.samples())))
        : Optional.empty();
  }

  private static List<String> notes(GraphSession.Stated stated) {
    List<String> notes = new ArrayList<>();
    if (!stated.isOne()) {
      notes.add(
          "the graph reports %d samples up to the return, but %d from the send on: the program states only one of them, or other programs are patched to it"
              .formatted(stated.samples(), stated.fromSend().minSamples()));
    }
    return notes;
  }
}
