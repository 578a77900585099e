package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.GraphSession;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.cli.wiring.Backends;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * {@code measure --through CLIENT}: measures a program of the audio server and holds the latency
 * that the server's graph reports for it against what it really adds.
 *
 * @param backends all there are
 * @param backend the one to use
 * @param live what was asked for
 * @param kept the profile under it
 * @param arrival which arrival is measured where there are several
 * @param consent asked before the sound
 * @param host what was said to be reported, instead of the graph
 */
public record ThroughProgram(
    Backends backends,
    AudioBackend backend,
    LiveOptions live,
    Optional<Profile> kept,
    ArrivalChoice arrival,
    Consent consent,
    HostCheckOptions host) {
  public Answer answer(String client, Optional<ChosenPath> chosen)
      throws CaptureException, IOException {
    if (live.device.output(Optional.empty()).isPresent()
        || live.device.input(Optional.empty()).isPresent()) {
      throw new UsageException(
          "expected --through or --output and --input, found both",
          "--through names the program for both");
    }
    Profile settings = live.settingsThrough(client, kept);
    consent.requireSomebody();
    try (AudioSession session = backends.open(backend, live.profile, settings.request())) {
      if (!(session instanceof GraphSession graph)) {
        throw new UsageException(
            "--through needs an audio server whose graph reports latencies, not " + backend.name(),
            "use --backend jack, or --reported-samples with what the host shows");
      }
      LiveReading reading = new LiveReading(session, settings, arrival, consent);
      consent.ask(reading.announcement());
      Estimate estimate = reading.throughProgram();
      return answer(estimate, graph.stated(0, 0), chosen);
    }
  }

  private Answer answer(
      Estimate estimate, GraphSession.Stated stated, Optional<ChosenPath> chosen) {
    return Answer.measured(
        new MeasurementDocument(
            "measure",
            estimate,
            chosen.flatMap(path -> path.compare(estimate)),
            host.check(estimate).or(() -> check(estimate, stated)),
            notes(stated)));
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
