package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.PairEstimator;
import dev.loopgauge.estimate.result.PairDelay;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Progress;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.signal.Samples;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The delay between every two channels of one recording, by its own sound.
 *
 * @param file the recording
 * @param channels which of its channels, counted from 1; empty for all
 * @param maxDelaySeconds the longest delay to look for
 */
public record PairsJob(Path file, Optional<List<Integer>> channels, double maxDelaySeconds) {
  /**
   * Reads every pair.
   *
   * @throws AudioFileException when the recording can't be read, or lacks a channel
   */
  public Answer run(Progress progress) throws AudioFileException {
    double longest = RecordingChoice.checkedMaxDelay(maxDelaySeconds);
    PairEstimator estimator = Refusals.asUsage(() -> new PairEstimator(longest));
    try (WavFile recording = WavFile.open(file)) {
      List<Integer> numbers =
          channels.orElse(IntStream.rangeClosed(1, recording.channels()).boxed().toList());
      if (numbers.size() < 2) {
        throw new UsageException(
            "expected at least two channels, found " + numbers.size(), "name more with --channels");
      }
      List<Samples> samples = new ArrayList<>();
      for (int number : numbers) {
        samples.add(recording.samples(number));
      }
      List<PairDelay> pairs = estimator.estimate(numbers, samples, progress::show);
      progress.done();
      boolean any = pairs.stream().anyMatch(pair -> pair.measured().isPresent());
      return new Answer(
          any ? Ending.GOOD : Ending.NOT_TRUSTWORTHY,
          PairsDocument.of("pairs", recording.rate(), pairs));
    }
  }
}
