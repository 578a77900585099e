package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.option.RecordingOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Progress;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.estimate.Stretches;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.verify.HostCheck;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;

/** One reference against one return channel or many. */
public final class AnalyzeChannels {
  /** A channel up to this length is read once and held; a longer one where it is asked for. */
  private static final int MOST_HELD = 1 << 20;

  /** The same of a channel among many, where each reading passes over all that lies beside it. */
  private static final int MOST_HELD_OF_MANY = 4_000_000;

  private final RecordingOptions options;
  private final double maxDelay;
  private final ArrivalChoice arrival;
  private final Optional<ChosenPath> chosen;
  private final Progress progress;

  public AnalyzeChannels(
      RecordingOptions options,
      ArrivalChoice arrival,
      Optional<ChosenPath> chosen,
      Progress progress) {
    this.options = options;
    this.maxDelay = options.maxDelay();
    this.arrival = arrival;
    this.chosen = chosen;
    this.progress = progress;
  }

  /** What several channels came to, one estimate each, and what to know about all. */
  private record Read(List<Estimate> estimates, List<String> notes) {
    Estimate only() {
      return estimates.get(0);
    }
  }

  /** One channel, with a plug-in bypassed in another recording or not. */
  public Answer one(Optional<Path> bypassed, HostCheckOptions host) throws AudioFileException {
    Path sent = options.sent();
    Read active = read(sent, options.returned);
    if (bypassed.isEmpty()) {
      return Answer.measured(document(active.only(), host.check(active.only()), active.notes()));
    }
    Read without =
        options.returned.isEmpty() || options.returned.get().equals(sent)
            ? read(bypassed.get(), Optional.empty())
            : read(sent, bypassed);
    ActiveAndBypassed both = new ActiveAndBypassed(active.only(), without.only());
    return Answer.measured(document(both.estimate(), both.check(host), active.notes()));
  }

  /** Several channels, one result each. */
  public Answer many() throws AudioFileException {
    Read read = read(options.sent(), options.returned);
    List<MeasurementDocument> documents =
        read.estimates().stream()
            .map(estimate -> document(estimate, Optional.empty(), read.notes()))
            .toList();
    return Answer.channels(ChannelsDocument.of("analyze", options.returnChannels(), documents));
  }

  private Read read(Path sent, Optional<Path> back) throws AudioFileException {
    try (Recordings recordings = options.open(sent, back)) {
      List<Samples> returns = recordings.returns();
      Samples reference = held(recordings.reference());
      Optional<Finding> mismatch = recordings.rateMismatch();
      if (mismatch.isPresent()) {
        Estimate refused = new Estimate.Refused(List.of(mismatch.get()));
        return new Read(Collections.nCopies(returns.size(), refused), List.of());
      }
      Stretches stretches =
          returns.size() > 1
              ? Stretches.forMany(reference, maxDelay)
              : Stretches.of(reference, maxDelay);
      List<Estimate> estimates = estimates(stretches, returns);
      return new Read(estimates, notes(recordings, stretches, estimates));
    }
  }

  private List<Estimate> estimates(Stretches stretches, List<Samples> returns) {
    DelayEstimator estimator = new DelayEstimator(maxDelay, arrival);
    if (returns.size() == 1) {
      return List.of(estimator.estimate(stretches, held(returns.get(0))));
    }
    AtomicInteger done = new AtomicInteger();
    List<Estimate> estimates =
        SideBySide.map(
            returns,
            ret -> {
              Estimate estimate = estimator.estimate(stretches, held(ret));
              progress.show((double) done.incrementAndGet() / returns.size());
              return estimate;
            });
    progress.done();
    return estimates;
  }

  private Samples held(Samples samples) {
    int most = options.returnChannels().size() > 1 ? MOST_HELD_OF_MANY : MOST_HELD;
    return samples.length() <= most ? samples.slice(0, samples.length()) : samples;
  }

  private List<String> notes(Recordings recordings, Stretches stretches, List<Estimate> estimates) {
    List<String> notes = new ArrayList<>(recordings.notes());
    if (stretches.leaveOut()) {
      String count = stretches.count() == 1 ? "1 stretch" : stretches.count() + " stretches";
      notes.add(
          "read in %s of %.0f s, where the reference is loudest; --track reads all"
              .formatted(count, stretches.seconds()));
    }
    if (estimates.stream().anyMatch(Estimate.Refused.class::isInstance)) {
      String searched = BigDecimal.valueOf(maxDelay).stripTrailingZeros().toPlainString();
      notes.add("delays up to " + searched + " s were looked for; --max-delay looks further");
    }
    return notes;
  }

  private MeasurementDocument document(
      Estimate estimate, Optional<HostCheck> check, List<String> notes) {
    return new MeasurementDocument(
        "analyze", estimate, chosen.flatMap(path -> path.compare(estimate)), check, notes);
  }
}
