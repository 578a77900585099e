package dev.loopgauge.job;

import dev.loopgauge.report.series.SeriesDocument;
import dev.loopgauge.report.series.SeriesStages;
import dev.loopgauge.verify.BlockSeries;
import dev.loopgauge.verify.CleanRun;
import dev.loopgauge.verify.FixedSplit;
import dev.loopgauge.verify.SeriesFit;
import dev.loopgauge.verify.SeriesNote;
import dev.loopgauge.verify.SeriesNotes;
import dev.loopgauge.verify.SeriesReading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the readings of a block series come to.
 *
 * @param readings two or more
 * @param notes what to know about how they were taken
 * @param chosen the path whose budget the result is compared with
 * @param source where the readings are from, for the comment of a chain file
 */
public record SeriesResult(
    List<SeriesReading> readings,
    List<SeriesNote> notes,
    Optional<ChosenPath> chosen,
    String source) {
  /** Copies the lists. */
  public SeriesResult {
    readings = List.copyOf(readings);
    notes = List.copyOf(notes);
  }

  /**
   * The document.
   *
   * @param chainFile where to write the result as a chain file of two stages; must not exist
   * @throws UsageException when it can't be written, or no stages could say it
   */
  public Answer answer(Optional<Path> chainFile) {
    SeriesFit fit = BlockSeries.fit(readings);
    chainFile.ifPresent(target -> write(target, fit));
    List<SeriesNote> all = new ArrayList<>(SeriesNotes.of(fit));
    all.addAll(notes);
    return Answer.good(
        SeriesDocument.of(
            fit,
            all,
            chosen.map(c -> FixedSplit.of(fit, c.chain(), c.path(), c.allowSamples())),
            CleanRun.of(readings),
            chainFile.map(Path::toString)));
  }

  private void write(Path target, SeriesFit fit) {
    if (!SeriesStages.possible(fit)) {
      throw new UsageException(
          "no stages could have less than no delay, as this series has it",
          "look at it without --out, and check readings and sample rate");
    }
    if (!fit.isWhole()) {
      throw new UsageException(
          String.format(
              Locale.ROOT, "expected a whole number of blocks to write, found %.3f", fit.blocks()),
          "look at it without --out: was one reading rounded, or the sample rate another?");
    }
    TextFile.writeNew(target, SeriesStages.chainFile(fit, source));
  }
}
