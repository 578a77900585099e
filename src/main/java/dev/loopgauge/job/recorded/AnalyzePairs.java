package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.cli.option.ChannelList;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.Progress;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.estimate.PairDelay;
import dev.loopgauge.estimate.PairEstimator;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.signal.Samples;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The delay between every two channels of one recording. */
public final class AnalyzePairs {
  private final Path file;
  private final Optional<ChannelList> chosen;
  private final PairEstimator estimator;

  public AnalyzePairs(Path file, Optional<ChannelList> chosen, double maxDelay) {
    this.file = file;
    this.chosen = chosen;
    this.estimator = new PairEstimator(maxDelay);
  }

  public Answer answer(Progress progress) throws AudioFileException {
    try (WavFile recording = WavFile.open(file)) {
      List<Integer> numbers =
          chosen
              .map(ChannelList::numbers)
              .orElse(IntStream.rangeClosed(1, recording.channels()).boxed().toList());
      if (numbers.size() < 2) {
        throw new UsageException(
            "expected at least two channels, found " + numbers.size(), "name more with --channels");
      }
      List<Samples> channels = new ArrayList<>();
      for (int number : numbers) {
        channels.add(recording.samples(number));
      }
      List<PairDelay> pairs = estimator.estimate(numbers, channels, progress::show);
      progress.done();
      boolean any = pairs.stream().anyMatch(pair -> pair.measured().isPresent());
      return new Answer(
          any ? ExitCode.GOOD : ExitCode.NOT_TRUSTWORTHY,
          new PairsDocument("analyze", recording.rate(), numbers, pairs));
    }
  }
}
