package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.Tracker;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.Progress;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.job.kept.PackedRecording;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.verify.TowardsLimit;
import dev.loopgauge.verify.TrackComparison;
import dev.loopgauge.verify.verdict.TrackJudge;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Follows the delay of one return through a long recording.
 *
 * @param recording where reference and return are
 * @param windowSeconds how long each reading is, 0.5 to 30 s
 * @param budget what to compare with
 * @param keep whether to keep the result
 */
public record FollowJob(
    RecordingChoice recording, double windowSeconds, BudgetChoice budget, KeepChoice keep) {
  /**
   * Checks that there is one return.
   *
   * @throws UsageException when there are several
   */
  public FollowJob {
    if (recording.channels().size() > 1) {
      throw new UsageException(
          "follow reads one return channel, found several", "follow them one after the other");
    }
  }

  /**
   * Follows the delay.
   *
   * @throws AudioFileException when a recording can't be read
   */
  public Answer run(Map<String, String> environment, Person person, Progress progress)
      throws AudioFileException, ChainFormatException {
    Answer answer = followed(keep.chosen(budget), progress);
    Optional<PackedRecording> packed =
        keep.keepCapture() ? recording.recorded().map(PackedRecording::ofFile) : Optional.empty();
    return new JournalKeeper(keep, budget, environment, person)
        .keep(answer, Optional.empty(), packed);
  }

  private Answer followed(Optional<ChosenPath> chosen, Progress progress)
      throws AudioFileException {
    Tracker tracker = Refusals.asUsage(() -> new Tracker(windowSeconds, recording.maxDelay()));
    try (Recordings recordings = recording.open()) {
      Optional<Finding> mismatch = recordings.rateMismatch();
      if (mismatch.isPresent()) {
        return answer(refused(mismatch.get()), recordings, chosen);
      }
      var reference = recordings.reference();
      var ret = recordings.returns().get(0);
      Optional<Finding> same = recording.sameSignal(reference, ret);
      if (same.isPresent()) {
        return answer(refused(same.get()), recordings, chosen);
      }
      Track track = Refusals.asUsage(() -> tracker.follow(reference, ret, progress::show));
      progress.done();
      return answer(track, recordings, chosen);
    }
  }

  private Track refused(Finding finding) {
    return new Track(windowSeconds, List.of(), 0, Optional.empty(), List.of(), List.of(finding));
  }

  private Answer answer(Track track, Recordings recordings, Optional<ChosenPath> chosen) {
    OptionalDouble block =
        chosen
            .map(path -> OptionalDouble.of(blockSamples(path, recordings)))
            .orElse(OptionalDouble.empty());
    Optional<TrackComparison> comparison =
        chosen.flatMap(c -> TrackComparison.of(track, c.chain(), c.path(), c.allowSamples()));
    TrackDocument document =
        TrackDocument.of(
            "follow",
            track,
            TrackJudge.of(track, comparison, chosen.flatMap(ChosenPath::picture)),
            comparison.map(TrackComparison::worst),
            block,
            towardsLimit(track, chosen),
            recordings.notes());
    Ending ending =
        track.points().isEmpty() ? Ending.NOT_TRUSTWORTHY : Answer.ending(document.verdict());
    return new Answer(ending, document);
  }

  /** When the listener's limit is passed, from where the delay ended up. */
  private static Optional<TowardsLimit> towardsLimit(Track track, Optional<ChosenPath> chosen) {
    boolean drifts =
        track.findings().stream().anyMatch(f -> f.code() == FindingCode.CLOCKS_NOT_LOCKED);
    return drifts
        ? chosen.flatMap(
            path ->
                TowardsLimit.of(
                    track.points().get(track.points().size() - 1).delay(),
                    track.driftPpm().orElseThrow(),
                    path.chain(),
                    path.path()))
        : Optional.empty();
  }

  /** The chain's block, in samples of the recording. */
  private static double blockSamples(ChosenPath path, Recordings recordings) {
    double seconds = (double) path.chain().blockSize() / path.chain().rate().hertz();
    return seconds * recordings.rate().hertz();
  }
}
