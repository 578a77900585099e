package dev.loopgauge.verify;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads block series from CSV text. The first line names the columns, in any order: {@code
 * block-size}, {@code delay-ms} or {@code delay-samples}, and if wanted {@code uncertainty-samples}
 * (expanded, k = 2), {@code cpu-percent} and {@code dropouts}. Columns are separated by commas, or
 * by semicolons or tabs, and then numbers may have a decimal comma. Lines that start with # are
 * skipped.
 */
public final class SeriesParser {
  /** The longest text read, in characters. */
  public static final int LONGEST_FILE = 250_000;

  /** The most readings in one series. */
  public static final int MOST_READINGS = 200;

  private SeriesParser() {}

  /**
   * Reads the text of a series.
   *
   * @param csv the text
   * @param sourceName what errors call the file
   * @param rate the rate that the rig ran at
   * @throws SeriesFormatException when the text is no series; it says where and why
   */
  public static List<SeriesReading> parse(String csv, String sourceName, SampleRate rate)
      throws SeriesFormatException {
    if (csv.length() > LONGEST_FILE) {
      throw new SeriesFormatException(
          sourceName, 1, "a short table", csv.length() + " characters", "is it the right file?");
    }
    String text = csv.startsWith("\uFEFF") ? csv.substring(1) : csv;
    char separator = SeriesColumns.separatorOf(text);
    List<CsvRecord> records = records(text, sourceName, separator);
    if (records.isEmpty()) {
      throw new SeriesFormatException(
          sourceName, 1, "a line that names the columns", "nothing", SeriesColumns.EXAMPLE);
    }
    SeriesColumns columns = SeriesColumns.of(records.get(0), sourceName, separator);
    List<SeriesRow> rows = new ArrayList<>();
    for (CsvRecord record : records.subList(1, records.size())) {
      rows.add(SeriesRow.of(record, columns));
    }
    check(rows, sourceName, records.get(records.size() - 1).getStartingLineNumber());
    return rows.stream().map(row -> reading(row, columns, rate)).toList();
  }

  /** The lines that hold anything. A reader of text in memory need not be closed. */
  private static List<CsvRecord> records(String text, String sourceName, char separator)
      throws SeriesFormatException {
    List<CsvRecord> records = new ArrayList<>();
    long line = 1;
    try {
      for (CsvRecord record : reader(text, separator)) {
        line = record.getStartingLineNumber();
        if (!record.getFields().stream().allMatch(String::isBlank)) {
          records.add(record);
        }
      }
      return records;
    } catch (CsvParseException e) {
      throw new SeriesFormatException(
          sourceName, line, "a table in CSV", "a line that can't be split", "look for quotes");
    }
  }

  private static CsvReader<CsvRecord> reader(String text, char separator) {
    return CsvReader.builder()
        .fieldSeparator(separator)
        .commentStrategy(CommentStrategy.SKIP)
        .allowExtraFields(true)
        .allowMissingFields(true)
        .ofCsvRecord(text);
  }

  private static void check(List<SeriesRow> rows, String sourceName, long lastLine)
      throws SeriesFormatException {
    if (rows.size() > MOST_READINGS) {
      throw new SeriesFormatException(
          sourceName,
          lastLine,
          "at most " + MOST_READINGS + " readings",
          String.valueOf(rows.size()),
          "a few at each block size are plenty");
    }
    List<Integer> sizes = rows.stream().map(SeriesRow::blockSize).distinct().toList();
    if (sizes.size() < 2) {
      throw new SeriesFormatException(
          sourceName,
          lastLine,
          "readings at two block sizes or more",
          sizes.isEmpty() ? "none" : "one block size, " + sizes.get(0),
          "read at three or more, such as 64, 128, 256 and 1024");
    }
  }

  /**
   * What the digits of a delay leave open, as a standard uncertainty in samples: half of its last
   * digit, rectangular (JCGM 100:2008, F.2.2.1). A delay whose last zeros were dropped counts for
   * less than it could; one with few digits never pulls those with many.
   */
  private static double rounding(SeriesRow row, SeriesColumns columns, SampleRate rate) {
    int decimals = Math.max(0, row.delay().scale());
    double step = BigDecimal.ONE.movePointLeft(decimals).doubleValue();
    double samples = columns.inMs() ? Latency.ofMs(step, rate).samples() : step;
    return samples / 2 / Math.sqrt(3);
  }

  private static SeriesReading reading(SeriesRow row, SeriesColumns columns, SampleRate rate) {
    double delay = row.delay().doubleValue();
    double uncertainty =
        row.uncertaintySamples().isPresent()
            ? row.uncertaintySamples().getAsDouble() / BlockSeries.COVERAGE
            : rounding(row, columns, rate);
    return new SeriesReading(
        row.blockSize(),
        columns.inMs() ? Latency.ofMs(delay, rate) : new Latency(delay, rate),
        Math.max(SeriesReading.LEAST_UNCERTAINTY, uncertainty),
        row.cpuPercent(),
        row.dropouts());
  }
}
