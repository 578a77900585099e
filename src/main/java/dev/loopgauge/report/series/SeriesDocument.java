package dev.loopgauge.report.series;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.verify.CleanRun;
import dev.loopgauge.verify.FixedSplit;
import dev.loopgauge.verify.SeriesFit;
import dev.loopgauge.verify.SeriesNote;
import dev.loopgauge.verify.SeriesReading;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A host taken apart into blocks and a fixed part.
 *
 * @param fit the result
 * @param notes what to know before believing it
 * @param split what a chain file explains of the fixed part, where one was named
 * @param clean the smallest block size that ran clean, where that was watched
 * @param written the chain file that was written, if one was
 */
public record SeriesDocument(
    SeriesFit fit,
    List<SeriesNote> notes,
    Optional<FixedSplit> split,
    Optional<CleanRun> clean,
    Optional<String> written)
    implements Document {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;
  private static final int BLOCK_DECIMALS = 5;
  private static final int PERCENT_DECIMALS = 2;

  /** Copies the list. */
  public SeriesDocument {
    notes = List.copyOf(notes);
  }

  @Override
  public String text() {
    return new SeriesText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("series", "fitted");
    json.put("fit", fitJson());
    json.put("readings", fit.readings().stream().map(SeriesDocument::reading).toList());
    json.put("predictions", fit.predictions().stream().map(SeriesDocument::prediction).toList());
    json.put("notes", notes.stream().map(SeriesDocument::note).toList());
    split.ifPresent(s -> json.put("split", split(s)));
    clean.ifPresent(c -> json.put("smallestClean", c.smallest().map(this::clean).orElse(null)));
    json.put("stages", SeriesStages.possible(fit) ? SeriesStages.lines(fit) : null);
    return json;
  }

  private Map<String, Object> fitJson() {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blocks", Numbers.rounded(fit.blocks(), BLOCK_DECIMALS));
    json.put("roundedBlocks", fit.roundedBlocks());
    json.put("fixedSamples", samples(fit.fixed().samples()));
    json.put("fixedMs", ms(fit.fixed().ms()));
    json.put("residualSamples", samples(fit.residualSamples()));
    json.put("uncertaintyBlocks", Numbers.roundedUp(fit.uncertaintyBlocks(), BLOCK_DECIMALS));
    return json;
  }

  private static Map<String, Object> reading(SeriesFit.Fitted fitted) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", fitted.reading().blockSize());
    json.put("delayMs", ms(fitted.reading().delay().ms()));
    json.put("fittedMs", ms(fitted.fitted().ms()));
    json.put("outlier", fitted.outlier());
    fitted
        .reading()
        .cpuPercent()
        .ifPresent(cpu -> json.put("cpuPercent", Numbers.rounded(cpu, PERCENT_DECIMALS)));
    fitted.reading().dropouts().ifPresent(dropouts -> json.put("dropouts", dropouts));
    return json;
  }

  private static Map<String, Object> prediction(SeriesFit.Prediction prediction) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", prediction.blockSize());
    json.put("delaySamples", samples(prediction.delay().samples()));
    json.put("delayMs", ms(prediction.delay().ms()));
    return json;
  }

  private static Map<String, Object> note(SeriesNote note) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("code", note.code());
    json.put("text", note.text());
    json.put("hint", note.hint());
    return json;
  }

  private static Map<String, Object> split(FixedSplit split) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", split.path());
    json.put("statedBlocks", samples(split.statedBlocks()));
    json.put("statedSamples", samples(split.statedSamples()));
    json.put("toleranceSamples", samples(split.toleranceSamples()));
    json.put("unstatedSamples", samples(split.unstatedSamples()));
    return json;
  }

  private Map<String, Object> clean(SeriesReading smallest) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", smallest.blockSize());
    json.put("delayMs", ms(fit.at(smallest.blockSize()).ms()));
    json.put(
        "cpuPercent",
        smallest.cpuPercent().isPresent()
            ? Numbers.rounded(smallest.cpuPercent().getAsDouble(), PERCENT_DECIMALS)
            : null);
    return json;
  }

  private static BigDecimal samples(double samples) {
    return Numbers.rounded(samples, SAMPLE_DECIMALS);
  }

  private static BigDecimal ms(double ms) {
    return Numbers.rounded(ms, MS_DECIMALS);
  }
}
