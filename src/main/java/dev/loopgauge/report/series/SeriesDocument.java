package dev.loopgauge.report.series;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.CleanRun;
import dev.loopgauge.verify.FixedSplit;
import dev.loopgauge.verify.SeriesFit;
import dev.loopgauge.verify.SeriesNote;
import dev.loopgauge.verify.SeriesReading;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A host taken apart into blocks and a fixed part.
 *
 * @param sampleRateHz the rate that samples count at
 * @param fit the result
 * @param readings what it rests on
 * @param predictions what comes of it at other block sizes
 * @param notes what to know before believing it
 * @param split what a chain file explains of the fixed part, where one was named
 * @param smallestClean the smallest block size that ran clean; null where none did, left out where
 *     that wasn't watched
 * @param stages the same as lines of a chain file; null where there can be no such stages
 * @param written the name of the chain file that was written, if one was
 */
public record SeriesDocument(
    String command,
    String outcome,
    Optional<Integer> sampleRateHz,
    FitRecord fit,
    List<ReadingRecord> readings,
    List<PredictionRecord> predictions,
    List<FindingRecord> notes,
    Optional<SplitRecord> split,
    Optional<CleanRecord> smallestClean,
    Optional<List<String>> stages,
    Optional<String> written)
    implements Document, Sparse {
  private static final int PERCENT_DECIMALS = 2;
  private static final int BLOCK_DECIMALS = 5;

  /** A reading and the line through all of them. */
  public record ReadingRecord(
      int blockSize,
      BigDecimal delayMs,
      BigDecimal fittedMs,
      Optional<Boolean> outlier,
      Optional<BigDecimal> cpuPercent,
      Optional<Integer> dropouts)
      implements Sparse {
    private static ReadingRecord of(SeriesFit.Fitted fitted) {
      SeriesReading reading = fitted.reading();
      return new ReadingRecord(
          reading.blockSize(),
          Written.ms(reading.delay().ms()),
          Written.ms(fitted.fitted().ms()),
          Optional.of(fitted.outlier()),
          percent(reading),
          reading.dropouts().isPresent()
              ? Optional.of(reading.dropouts().getAsInt())
              : Optional.empty());
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("cpuPercent", "dropouts");
    }

    /** Whether it lies off the line. */
    public boolean isOutlier() {
      return outlier.orElse(false);
    }

    /** How much later than the line it is, in ms. */
    public BigDecimal laterMs() {
      return delayMs.subtract(fittedMs);
    }
  }

  /** The delay at a block size. */
  public record PredictionRecord(
      int blockSize, Optional<BigDecimal> delaySamples, BigDecimal delayMs) {
    private static PredictionRecord of(SeriesFit.Prediction prediction) {
      return new PredictionRecord(
          prediction.blockSize(),
          Optional.of(Written.samples(prediction.delay().samples())),
          Written.ms(prediction.delay().ms()));
    }
  }

  /** What a path of a chain file states besides its blocks. */
  public record SplitRecord(
      String path,
      Optional<BigDecimal> statedBlocks,
      BigDecimal statedSamples,
      Optional<BigDecimal> toleranceSamples,
      BigDecimal unstatedSamples) {
    private static SplitRecord of(FixedSplit split) {
      return new SplitRecord(
          split.path(),
          Optional.of(Written.samples(split.statedBlocks())),
          Written.samples(split.statedSamples()),
          Optional.of(Written.samples(split.toleranceSamples())),
          Written.samples(split.unstatedSamples()));
    }

    /** Whether what it states is the fixed part. */
    boolean isExplained() {
      BigDecimal tolerance = toleranceSamples.orElse(BigDecimal.ZERO);
      return unstatedSamples.abs().compareTo(tolerance) <= 0;
    }
  }

  /** A block size that ran clean. */
  public record CleanRecord(int blockSize, BigDecimal delayMs, Optional<BigDecimal> cpuPercent) {}

  /**
   * The document of a series.
   *
   * @param notes what to know before believing it
   * @param split what a chain file explains of the fixed part, where one was named
   * @param clean the smallest block size that ran clean, where that was watched
   * @param written the chain file that was written, if one was
   */
  public static SeriesDocument of(
      SeriesFit fit,
      List<SeriesNote> notes,
      Optional<FixedSplit> split,
      Optional<CleanRun> clean,
      Optional<String> written) {
    return new SeriesDocument(
        "series",
        "fitted",
        Optional.of(fit.fixed().rate().hertz()),
        FitRecord.of(fit),
        fit.readings().stream().map(ReadingRecord::of).toList(),
        fit.predictions().stream().map(PredictionRecord::of).toList(),
        notes.stream().map(SeriesDocument::note).toList(),
        split.map(SplitRecord::of),
        clean.flatMap(CleanRun::smallest).map(smallest -> clean(fit, smallest)),
        Optional.of(fit).filter(SeriesStages::possible).map(SeriesStages::lines),
        written.map(file -> String.valueOf(Path.of(file).getFileName())));
  }

  private static FindingRecord note(SeriesNote note) {
    return new FindingRecord(
        Optional.of(note.code()),
        Optional.empty(),
        Optional.of(note.text()),
        Optional.of(note.hint()));
  }

  private static CleanRecord clean(SeriesFit fit, SeriesReading smallest) {
    return new CleanRecord(
        smallest.blockSize(), Written.ms(fit.at(smallest.blockSize()).ms()), percent(smallest));
  }

  private static Optional<BigDecimal> percent(SeriesReading reading) {
    return Written.boxed(reading.cpuPercent()).map(cpu -> Numbers.rounded(cpu, PERCENT_DECIMALS));
  }

  @Override
  public Set<String> leftOut() {
    return watched()
        ? Set.of("sampleRateHz", "split", "written")
        : Set.of("sampleRateHz", "split", "written", "smallestClean");
  }

  /** Whether anything was noted of how the computer kept up. */
  boolean watched() {
    return dropoutsCounted() || cpuWatched();
  }

  /** Whether dropouts were counted. */
  boolean dropoutsCounted() {
    return readings.stream().anyMatch(reading -> reading.dropouts().isPresent());
  }

  /** Whether the processor's load was noted. */
  boolean cpuWatched() {
    return readings.stream().anyMatch(reading -> reading.cpuPercent().isPresent());
  }

  /**
   * The blocks as they are told and the predictions count with: whole where they are for all that
   * is known.
   */
  BigDecimal toldBlocks() {
    if (predictions.size() < 2) {
      return fit.blocks();
    }
    PredictionRecord first = predictions.get(0);
    PredictionRecord last = predictions.get(predictions.size() - 1);
    int sizes = last.blockSize() - first.blockSize();
    if (sizes == 0 || first.delaySamples().isEmpty() || last.delaySamples().isEmpty()) {
      return fit.blocks();
    }
    BigDecimal samples = last.delaySamples().get().subtract(first.delaySamples().get());
    return samples.divide(BigDecimal.valueOf(sizes), BLOCK_DECIMALS, RoundingMode.HALF_UP);
  }

  @Override
  public String text() {
    return SeriesText.of(this);
  }
}
