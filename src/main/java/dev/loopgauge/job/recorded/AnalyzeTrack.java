package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.cli.option.RecordingOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.Progress;
import dev.loopgauge.cli.terminal.Refusals;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.estimate.FindingCode;
import dev.loopgauge.estimate.Track;
import dev.loopgauge.estimate.Tracker;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.verify.TowardsLimit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Follows the delay of one return through a long recording. */
public final class AnalyzeTrack {
  private final RecordingOptions options;
  private final double windowSeconds;
  private final Optional<ChosenPath> chosen;

  public AnalyzeTrack(RecordingOptions options, double windowSeconds, Optional<ChosenPath> chosen) {
    this.options = options;
    this.windowSeconds = windowSeconds;
    this.chosen = chosen;
  }

  public Answer answer(Progress progress) throws AudioFileException {
    Tracker tracker = Refusals.asUsage(() -> new Tracker(windowSeconds, options.maxDelay()));
    try (Recordings recordings = options.open()) {
      Optional<Finding> mismatch = recordings.rateMismatch();
      if (mismatch.isPresent()) {
        return answer(refused(mismatch.get()), recordings);
      }
      var reference = recordings.reference();
      var ret = recordings.returns().get(0);
      Track track = Refusals.asUsage(() -> tracker.follow(reference, ret, progress::show));
      progress.done();
      return answer(track, recordings);
    }
  }

  private Track refused(Finding finding) {
    return new Track(
        windowSeconds, List.of(), 0, OptionalDouble.empty(), List.of(), List.of(finding));
  }

  private Answer answer(Track track, Recordings recordings) {
    OptionalDouble block =
        chosen
            .map(path -> OptionalDouble.of(blockSamples(path, recordings)))
            .orElse(OptionalDouble.empty());
    int exitCode = track.points().isEmpty() ? ExitCode.NOT_TRUSTWORTHY : ExitCode.GOOD;
    return new Answer(
        exitCode,
        new TrackDocument("analyze", track, block, towardsLimit(track), recordings.notes()));
  }

  /** When the listener's limit is passed, from where the delay ended up. */
  private Optional<TowardsLimit> towardsLimit(Track track) {
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
