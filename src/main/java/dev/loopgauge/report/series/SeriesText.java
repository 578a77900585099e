package dev.loopgauge.report.series;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.CleanRun;
import dev.loopgauge.verify.FixedSplit;
import dev.loopgauge.verify.SeriesFit;
import dev.loopgauge.verify.SeriesNote;
import java.util.OptionalDouble;

/** A block series as text: what the host is, then what that rests on. */
final class SeriesText {
  private final SeriesFit fit;
  private final Sheet sheet = new Sheet();

  SeriesText(SeriesDocument document) {
    fit = document.fit();
    sheet.line(
        "%s plus %s, at %s kHz."
            .formatted(
                blocks(fit.toldBlocks()),
                delay(fit.fixed()),
                Numbers.brief(fit.fixed().rate().hertz() / 1000.0, 4)));
    sheet.row(
        "fit",
        "%s ± %s blocks; the readings lie within %s samples of the line"
            .formatted(
                Numbers.plain(fit.blocks(), decimals()),
                Numbers.plainUp(fit.uncertaintyBlocks(), decimals()),
                Numbers.plain(fit.worstSamples(), 1)));
    document.split().ifPresent(this::split);
    document.clean().ifPresent(this::clean);
    for (SeriesNote note : document.notes()) {
      sheet.row(note.code().equals("outlier") ? "ODD" : "careful", note.text());
      sheet.row("  try", note.hint());
    }
    sheet.gap();
    readings(document.clean().isPresent());
    sheet.gap();
    predictions();
    if (SeriesStages.possible(fit)) {
      sheet.gap();
      sheet.line(document.written().map(f -> "Written: " + f).orElse("For a chain file:"));
      SeriesStages.lines(fit).forEach(line -> sheet.asIs("  " + line));
    }
  }

  private int decimals() {
    return Numbers.decimalsFor(fit.uncertaintyBlocks(), 4);
  }

  private static String blocks(double blocks) {
    String count = Numbers.brief(blocks, 3);
    return count.equals("1") ? "1 block" : count + " blocks";
  }

  private static String delay(Latency delay) {
    return "%s samples (%s ms)"
        .formatted(Numbers.brief(delay.samples(), 1), Numbers.plain(delay.ms(), 2));
  }

  private void split(FixedSplit split) {
    Latency rest = new Latency(Math.abs(split.unstatedSamples()), fit.fixed().rate());
    String stated =
        "%s states %s samples besides its blocks: "
            .formatted(split.path(), Numbers.brief(split.statedSamples(), 1));
    if (split.isExplained()) {
      sheet.row("chain file", stated + "that is the fixed part");
    } else if (split.unstatedSamples() > 0) {
      sheet.row(
          "chain file",
          stated + delay(rest) + " nobody stated; safety buffers of the driver, usually");
    } else {
      sheet.row("chain file", stated + delay(rest) + " more than there is");
    }
    if (Math.abs(split.statedBlocks() - fit.toldBlocks()) > fit.uncertaintyBlocks()) {
      sheet.row("", "and states " + blocks(split.statedBlocks()) + ", which is not what was read");
    }
  }

  private void clean(CleanRun clean) {
    String asked = clean.dropoutsCounted() ? "no dropouts" : "headroom (dropouts not counted)";
    String room = clean.cpuWatched() ? "" : "; the processor's headroom was not watched";
    sheet.row(
        "clean",
        clean
            .smallest()
            .map(
                reading ->
                    "%d is the smallest block that ran clean, with %s%s: %s"
                        .formatted(
                            reading.blockSize(),
                            asked + cpu(reading.cpuPercent()),
                            room,
                            delay(fit.at(reading.blockSize()))))
            .orElse(
                "no block size ran without dropouts and with the processor at %s %% or less"
                    .formatted(Numbers.brief(CleanRun.BUSIEST_PERCENT, 0))));
  }

  private static String cpu(OptionalDouble percent) {
    return percent.isPresent()
        ? ", processor at " + Numbers.brief(percent.getAsDouble(), 0) + " %"
        : "";
  }

  private void readings(boolean watched) {
    Table<SeriesFit.Fitted> table =
        new Table<SeriesFit.Fitted>()
            .figures("block", f -> String.valueOf(f.reading().blockSize()))
            .figures("read ms", f -> Numbers.plain(f.reading().delay().ms(), 3))
            .figures("line ms", f -> Numbers.plain(f.fitted().ms(), 3))
            .figures("off, samples", f -> Numbers.signed(f.laterSamples(), 1));
    if (watched) {
      table
          .figures("cpu %", f -> number(f.reading().cpuPercent()))
          .figures(
              "dropouts",
              f ->
                  f.reading().dropouts().isPresent()
                      ? "" + f.reading().dropouts().getAsInt()
                      : "-");
    }
    table
        .words("", f -> f.outlier() ? "ODD: left out" : "")
        .lines(fit.readings())
        .forEach(sheet::asIs);
  }

  private static String number(OptionalDouble number) {
    return number.isPresent() ? Numbers.brief(number.getAsDouble(), 1) : "-";
  }

  private void predictions() {
    sheet.line("At other block sizes:");
    new Table<SeriesFit.Prediction>()
        .figures("block", p -> String.valueOf(p.blockSize()))
        .figures("ms", p -> Numbers.plain(p.delay().ms(), 2))
        .figures("samples", p -> Numbers.plain(p.delay().samples(), 1))
        .lines(fit.predictions())
        .forEach(sheet::asIs);
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
