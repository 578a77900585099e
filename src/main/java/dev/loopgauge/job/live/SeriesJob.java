package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.SeriesResult;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.SeriesNote;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Measures one loop while its host runs at one block size after another, and works out how many
 * blocks, plus a fixed part, it adds.
 *
 * @param live what to play and record, and where
 * @param budget whose path the result is compared with
 * @param rig what is wrong with the built-in rig
 * @param sizes the block sizes, in samples
 * @param minutes how long to go on at each, in minutes of sound; 0 for one take
 * @param chainFile where to write the result as a chain file
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record SeriesJob(
    LiveChoice live,
    BudgetChoice budget,
    RigChoice rig,
    List<Integer> sizes,
    double minutes,
    Optional<Path> chainFile,
    boolean agreed) {
  /** What a series measures at unless it is told. */
  public static final List<Integer> DEFAULT_SIZES = List.of(64, 128, 256, 512, 1024);

  /** Copies the sizes. */
  public SeriesJob {
    sizes = List.copyOf(sizes);
  }

  /**
   * Measures at each block size; the host is set back at the end, whatever happens.
   *
   * @param soFar learns of each block size as it is done
   * @throws CaptureException when the sound fails for good
   */
  public Answer run(Site site, SoFar soFar)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    LiveRequest request =
        new LiveRequest(
            live, budget, HostReport.NONE, rig, ArrivalChoice.UNDECIDED, KeepChoice.NONE, agreed);
    return LiveRun.kept(site, request, soFar, this::measured);
  }

  private Answer measured(LiveRun run, Consumer<Answer> soFar)
      throws CaptureException, SetupException, IOException {
    run.consent().requireSomebody();
    LiveSeries series = new LiveSeries(run.target(run.settings()), minutes, run.consent());
    try (HostBlocks host = HostBlocks.of(run)) {
      series.read(host, sizes, () -> soFar.accept(stopped(series, run)));
    }
    if (series.readings().size() < 2) {
      return new Answer(
          Ending.NOT_TRUSTWORTHY, tooFew(series.readings().size(), series.notes().get(0)));
    }
    return new SeriesResult(series.readings(), series.notes(), run.chosen(), "block series, live")
        .answer(chainFile);
  }

  private Answer stopped(LiveSeries series, LiveRun run) {
    int read = series.readings().size();
    List<SeriesNote> notes = new ArrayList<>(series.notes());
    notes.add(
        new SeriesNote(
            "stopped",
            "it was interrupted after %d of %d block sizes".formatted(read, sizes.size()),
            "run it again for the others"));
    if (read < 2) {
      return new Answer(Ending.NOT_TRUSTWORTHY, tooFew(read, notes.get(notes.size() - 1)));
    }
    return new SeriesResult(series.readings(), notes, run.chosen(), "block series, live")
        .answer(Optional.empty());
  }

  private static ErrorDocument tooFew(int read, SeriesNote why) {
    return ErrorDocument.of(
        "series",
        "too-few-readings",
        "a series needs readings at two block sizes, found %d: %s".formatted(read, why.text()),
        why.hint());
  }
}
