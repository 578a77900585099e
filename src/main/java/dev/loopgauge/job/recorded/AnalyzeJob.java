package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Segments;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.Progress;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.job.kept.PackedRecording;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.verify.HostCheck;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * One reference against one return channel or many.
 *
 * @param recording where they are
 * @param bypassed the same again with a plug-in bypassed; with one channel only
 * @param arrival which arrival is measured where there are several
 * @param budget what to compare with
 * @param reported what the host shows
 * @param keep whether to keep the result
 */
public record AnalyzeJob(
    RecordingChoice recording,
    Optional<Path> bypassed,
    ArrivalChoice arrival,
    BudgetChoice budget,
    HostReport reported,
    KeepChoice keep) {
  /** A channel up to this length is read once and held; a longer one where it is asked for. */
  private static final int MOST_HELD = 1 << 20;

  /** The same of a channel among many, where each reading passes over all that lies beside it. */
  private static final int MOST_HELD_OF_MANY = 4_000_000;

  /**
   * Checks that the choices go together.
   *
   * @throws UsageException when they don't
   */
  public AnalyzeJob {
    recording.maxDelay();
    if (bypassed.isPresent() && recording.channels().size() > 1) {
      throw new UsageException(
          "--bypassed goes with one delay, found several", "name one --return-channel");
    }
  }

  /**
   * Reads and compares.
   *
   * @throws AudioFileException when a recording can't be read
   */
  public Answer run(Map<String, String> environment, Person person, Progress progress)
      throws AudioFileException, ChainFormatException {
    Optional<ChosenPath> chosen = keep.chosen(budget);
    Answer answer =
        recording.channels().size() == 1 ? one(chosen, progress) : many(chosen, progress);
    Optional<PackedRecording> packed =
        keep.keepCapture() ? recording.recorded().map(PackedRecording::ofFile) : Optional.empty();
    return new JournalKeeper(keep, budget, environment, person)
        .keep(answer, Optional.empty(), packed);
  }

  /** What several channels came to, one estimate each, and what to know about all. */
  private record Read(List<Estimate> estimates, List<String> notes) {
    Estimate only() {
      return estimates.get(0);
    }
  }

  private Answer one(Optional<ChosenPath> chosen, Progress progress) throws AudioFileException {
    Path sent = recording.sent();
    Read active = read(sent, recording.returned(), progress);
    Estimate only = active.only();
    if (bypassed.isEmpty()) {
      return Answer.measured(document(only, chosen, reported.check(only), active.notes()));
    }
    Read without =
        recording.returned().isEmpty() || recording.returned().get().equals(sent)
            ? read(bypassed.get(), Optional.empty(), progress)
            : read(sent, bypassed, progress);
    ActiveAndBypassed both = new ActiveAndBypassed(only, without.only());
    return Answer.measured(document(both.estimate(), chosen, both.check(reported), active.notes()));
  }

  private Answer many(Optional<ChosenPath> chosen, Progress progress) throws AudioFileException {
    Read read = read(recording.sent(), recording.returned(), progress);
    List<MeasurementDocument> documents =
        read.estimates().stream()
            .map(estimate -> document(estimate, chosen, Optional.empty(), read.notes()))
            .toList();
    return Answer.channels(ChannelsDocument.of("analyze", recording.channels(), documents));
  }

  private Read read(Path sent, Optional<Path> back, Progress progress) throws AudioFileException {
    try (Recordings recordings = recording.open(sent, back)) {
      List<Samples> returns = recordings.returns();
      Samples reference = held(recordings.reference());
      Optional<Finding> mismatch = recordings.rateMismatch();
      if (mismatch.isPresent()) {
        Estimate refused = new Estimate.Refused(List.of(mismatch.get()));
        return new Read(Collections.nCopies(returns.size(), refused), List.of());
      }
      Segments stretches =
          returns.size() > 1
              ? Segments.forMany(reference, recording.maxDelay())
              : Segments.of(reference, recording.maxDelay());
      List<Estimate> estimates = estimates(reference, stretches, returns, progress);
      return new Read(estimates, notes(recordings, stretches, estimates));
    }
  }

  private List<Estimate> estimates(
      Samples reference, Segments stretches, List<Samples> returns, Progress progress) {
    DelayEstimator estimator = new DelayEstimator(recording.maxDelay(), arrival);
    if (returns.size() == 1) {
      return List.of(estimate(estimator, reference, stretches, returns.get(0)));
    }
    AtomicInteger done = new AtomicInteger();
    List<Estimate> estimates =
        Workers.map(
            returns,
            ret -> {
              Estimate estimate = estimate(estimator, reference, stretches, ret);
              progress.show((double) done.incrementAndGet() / returns.size());
              return estimate;
            });
    progress.done();
    return estimates;
  }

  private Estimate estimate(
      DelayEstimator estimator, Samples reference, Segments stretches, Samples ret) {
    Samples back = held(ret);
    Optional<Finding> same = recording.sameSignal(reference, back);
    return same.isPresent()
        ? new Estimate.Refused(List.of(same.get()))
        : estimator.estimate(stretches, back);
  }

  private Samples held(Samples samples) {
    int most = recording.channels().size() > 1 ? MOST_HELD_OF_MANY : MOST_HELD;
    return samples.length() <= most ? samples.slice(0, samples.length()) : samples;
  }

  private List<String> notes(Recordings recordings, Segments stretches, List<Estimate> estimates) {
    List<String> notes = new ArrayList<>(recordings.notes());
    if (stretches.leaveOut()) {
      String count = stretches.count() == 1 ? "1 stretch" : stretches.count() + " stretches";
      notes.add(
          "read in %s of %.0f s, where the reference is loudest; `loopgauge follow` reads all"
              .formatted(count, stretches.seconds()));
    }
    if (isAnyRefused(estimates)) {
      String searched =
          BigDecimal.valueOf(recording.maxDelay()).stripTrailingZeros().toPlainString();
      notes.add("delays up to " + searched + " s were looked for; --max-delay looks further");
    }
    return notes;
  }

  private static boolean isAnyRefused(List<Estimate> estimates) {
    for (Estimate estimate : estimates) {
      if (estimate instanceof Estimate.Refused) {
        return true;
      }
    }
    return false;
  }

  private MeasurementDocument document(
      Estimate estimate,
      Optional<ChosenPath> chosen,
      Optional<HostCheck> check,
      List<String> notes) {
    return MeasurementDocument.of("analyze", ChosenPath.judge(chosen, estimate, check), notes);
  }
}
