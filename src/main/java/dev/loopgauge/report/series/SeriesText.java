package dev.loopgauge.report.series;

import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.report.series.SeriesDocument.CleanRecord;
import dev.loopgauge.report.series.SeriesDocument.PredictionRecord;
import dev.loopgauge.report.series.SeriesDocument.ReadingRecord;
import dev.loopgauge.report.series.SeriesDocument.SplitRecord;
import dev.loopgauge.verify.CleanRun;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** A block series as text: what the host is, then what that rests on. */
final class SeriesText {
  private final SeriesDocument document;
  private final FitRecord fit;
  private final Sheet sheet = new Sheet();

  private SeriesText(SeriesDocument document) {
    this.document = document;
    this.fit = document.fit();
  }

  /** The text. */
  static String of(SeriesDocument document) {
    SeriesText text = new SeriesText(document);
    text.tell();
    return text.sheet.toString();
  }

  private void tell() {
    String rate =
        document
            .sampleRateHz()
            .map(hz -> ", at " + Numbers.brief(hz / 1000.0, 4) + " kHz")
            .orElse("");
    sheet.line(blocks(document.toldBlocks()) + " plus " + fixed() + rate + ".");
    sheet.row("fit", fit.blocksInWords() + " blocks" + worst());
    document.split().ifPresent(this::split);
    if (document.watched()) {
      clean();
    }
    document.notes().forEach(this::note);
    sheet.gap();
    readings();
    sheet.gap();
    predictions();
    document.stages().ifPresent(this::stages);
  }

  private void note(FindingRecord note) {
    note.tell(sheet, note.code().equals(Optional.of("outlier")) ? "ODD" : "CHECK");
  }

  private void stages(List<String> lines) {
    sheet.gap();
    if (document.written().isPresent()) {
      sheet.line("Written: " + document.written().get());
      return;
    }
    sheet.line("For a chain file:");
    lines.forEach(line -> sheet.asIs("  " + line));
  }

  private String worst() {
    return document
        .sampleRateHz()
        .map(hz -> worstMs() * hz / 1000)
        .map(worst -> "; the readings lie within " + Numbers.plain(worst, 1))
        .map(within -> within + " samples of the line")
        .orElse("");
  }

  private double worstMs() {
    return document.readings().stream()
        .filter(reading -> !reading.isOutlier())
        .mapToDouble(reading -> Math.abs(reading.laterMs().doubleValue()))
        .max()
        .orElse(0);
  }

  private static String blocks(BigDecimal blocks) {
    String count = Numbers.brief(blocks.doubleValue(), 3);
    return count.equals("1") ? "1 block" : count + " blocks";
  }

  private String fixed() {
    String ms =
        fit.fixedMs()
            .map(known -> " (" + Numbers.plain(known.doubleValue(), 2) + " ms)")
            .orElse("");
    return Numbers.brief(fit.fixedSamples().doubleValue(), 1) + " samples" + ms;
  }

  private String delay(BigDecimal samples) {
    String ms =
        document
            .sampleRateHz()
            .map(hz -> samples.doubleValue() * 1000 / hz)
            .map(known -> " (" + Numbers.plain(known, 2) + " ms)")
            .orElse("");
    return Numbers.brief(samples.doubleValue(), 1) + " samples" + ms;
  }

  private void split(SplitRecord split) {
    String rest = delay(split.unstatedSamples().abs());
    String stated =
        "%s states %s samples besides its blocks: "
            .formatted(split.path(), Numbers.brief(split.statedSamples().doubleValue(), 1));
    if (split.isExplained()) {
      sheet.row("chain file", stated + "that is the fixed part");
    } else if (split.unstatedSamples().signum() > 0) {
      sheet.row(
          "chain file", stated + rest + " nobody stated; safety buffers of the driver, usually");
    } else {
      sheet.row("chain file", stated + rest + " more than there is");
    }
    split
        .statedBlocks()
        .filter(this::isOff)
        .ifPresent(
            blocks ->
                sheet.row("", "and states " + blocks(blocks) + ", which is not what was read"));
  }

  private boolean isOff(BigDecimal statedBlocks) {
    BigDecimal uncertainty = fit.uncertaintyBlocks().orElse(BigDecimal.ZERO);
    return statedBlocks.subtract(document.toldBlocks()).abs().compareTo(uncertainty) > 0;
  }

  private void clean() {
    sheet.row(
        "clean",
        document
            .smallestClean()
            .map(this::smallest)
            .orElse(
                "no block size ran without dropouts and with the processor at %s %% or less"
                    .formatted(Numbers.brief(CleanRun.BUSIEST_PERCENT, 0))));
  }

  private String smallest(CleanRecord smallest) {
    String asked = document.dropoutsCounted() ? "no dropouts" : "headroom (dropouts not counted)";
    String cpu =
        smallest
            .cpuPercent()
            .map(percent -> ", processor at " + Numbers.brief(percent.doubleValue(), 0) + " %")
            .orElse("");
    String room = document.cpuWatched() ? "" : "; the processor's headroom was not watched";
    return smallest.blockSize()
        + (" is the smallest block that ran clean, with " + asked + cpu + room + ": ")
        + at(smallest.delayMs());
  }

  private String at(BigDecimal ms) {
    String plain = Numbers.plain(ms.doubleValue(), 2);
    return document
        .sampleRateHz()
        .map(hz -> Numbers.brief(ms.doubleValue() * hz / 1000, 1))
        .map(samples -> samples + " samples (" + plain + " ms)")
        .orElse(plain + " ms");
  }

  private void readings() {
    Table<ReadingRecord> table =
        new Table<ReadingRecord>()
            .figures("block", reading -> String.valueOf(reading.blockSize()))
            .figures("read ms", reading -> Numbers.plain(reading.delayMs().doubleValue(), 3))
            .figures("line ms", reading -> Numbers.plain(reading.fittedMs().doubleValue(), 3));
    document
        .sampleRateHz()
        .ifPresent(
            hz ->
                table.figures(
                    "off, samples", r -> Numbers.signed(r.laterMs().doubleValue() * hz / 1000, 1)));
    if (document.watched()) {
      table
          .figures("cpu %", SeriesText::cpu)
          .figures("dropouts", reading -> reading.dropouts().map(String::valueOf).orElse("-"));
    }
    table
        .words("", reading -> reading.isOutlier() ? "ODD: left out" : "")
        .tell(document.readings(), sheet);
  }

  private static String cpu(ReadingRecord reading) {
    return reading.cpuPercent().map(percent -> Numbers.brief(percent.doubleValue(), 1)).orElse("-");
  }

  private void predictions() {
    sheet.line("At other block sizes:");
    new Table<PredictionRecord>()
        .figures("block", p -> String.valueOf(p.blockSize()))
        .figures("ms", p -> Numbers.plain(p.delayMs().doubleValue(), 2))
        .figures(
            "samples",
            p -> p.delaySamples().map(s -> Numbers.plain(s.doubleValue(), 1)).orElse("-"))
        .tell(document.predictions(), sheet);
  }
}
