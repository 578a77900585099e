package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.SeriesResult;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.SeriesNote;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

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
   * @throws CaptureException when the sound fails for good
   */
  public Answer run(Site site)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    LiveRequest request =
        new LiveRequest(
            live, budget, HostReport.NONE, rig, ArrivalChoice.UNDECIDED, KeepChoice.NONE, agreed);
    return LiveRun.kept(site, request, this::measured);
  }

  private Answer measured(LiveRun run) throws CaptureException, SetupException, IOException {
    run.consent().requireSomebody();
    LiveSeries series = new LiveSeries(run.target(run.settings()), minutes, run.consent());
    try (HostBlocks host = HostBlocks.of(run)) {
      series.read(host, sizes);
    }
    if (series.readings().size() < 2) {
      return new Answer(Ending.NOT_TRUSTWORTHY, tooFew(series));
    }
    return new SeriesResult(series.readings(), series.notes(), run.chosen(), "block series, live")
        .answer(chainFile);
  }

  private static ErrorDocument tooFew(LiveSeries series) {
    SeriesNote why = series.notes().get(0);
    return ErrorDocument.of(
        "series",
        "too-few-readings",
        "a series needs readings at two block sizes, found %d: %s"
            .formatted(series.readings().size(), why.text()),
        why.hint());
  }
}
