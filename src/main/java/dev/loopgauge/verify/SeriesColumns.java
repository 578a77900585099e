package dev.loopgauge.verify;

import de.siegmar.fastcsv.reader.CsvRecord;
import dev.loopgauge.chain.Nearest;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The columns of a series.
 *
 * @param file what errors call the file
 * @param names their names, in the order of the file
 * @param separator what separates them
 */
record SeriesColumns(String file, List<String> names, char separator) {
  static final String BLOCK_SIZE = "block-size";
  static final String DELAY_MS = "delay-ms";
  static final String DELAY_SAMPLES = "delay-samples";
  static final String UNCERTAINTY = "uncertainty-samples";
  static final String CPU = "cpu-percent";
  static final String DROPOUTS = "dropouts";

  static final String EXAMPLE = "the first line is block-size,delay-ms and the next 64,7.2";

  private static final List<String> KNOWN =
      List.of(BLOCK_SIZE, DELAY_MS, DELAY_SAMPLES, UNCERTAINTY, CPU, DROPOUTS);
  private static final int LONGEST_SHOWN = 40;

  /**
   * The columns that a header names.
   *
   * @throws SeriesFormatException when it names unknown ones, one twice, or lacks one
   */
  static SeriesColumns of(CsvRecord header, String file, char separator)
      throws SeriesFormatException {
    List<String> names =
        header.getFields().stream().map(name -> name.strip().toLowerCase(Locale.ROOT)).toList();
    long line = header.getStartingLineNumber();
    Set<String> seen = new HashSet<>();
    for (String name : names) {
      if (!KNOWN.contains(name)) {
        throw new SeriesFormatException(
            file, line, "the name of a column", quoted(name), Nearest.hint(name, KNOWN));
      }
      if (!seen.add(name)) {
        throw new SeriesFormatException(
            file, line, "each column once", quoted(name) + " twice", "take one out");
      }
    }
    if (!seen.contains(BLOCK_SIZE)) {
      throw new SeriesFormatException(file, line, "a column " + BLOCK_SIZE, "none", EXAMPLE);
    }
    if (seen.contains(DELAY_MS) == seen.contains(DELAY_SAMPLES)) {
      throw new SeriesFormatException(
          file,
          line,
          "a column " + DELAY_MS + " or " + DELAY_SAMPLES,
          seen.contains(DELAY_MS) ? "both" : "neither",
          EXAMPLE);
    }
    return new SeriesColumns(file, names, separator);
  }

  /** Whether delays are given in ms, rather than in samples. */
  boolean inMs() {
    return names.contains(DELAY_MS);
  }

  /** The column of the delays. */
  String delay() {
    return inMs() ? DELAY_MS : DELAY_SAMPLES;
  }

  /** What separates the columns of a text: what stands in its header. */
  static char separatorOf(String text) {
    String header =
        text.lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .findFirst()
            .orElse("");
    if (header.contains(";")) {
      return ';';
    }
    return header.contains("\t") ? '\t' : ',';
  }

  /** Foreign text in quotes, on one line, its end left off if long. */
  static String quoted(String text) {
    String plain = text.replaceAll("[\\p{Cntrl}\\p{Zl}\\p{Zp}]", "?");
    return plain.length() <= LONGEST_SHOWN
        ? "'" + plain + "'"
        : "'" + plain.substring(0, LONGEST_SHOWN) + "...'";
  }
}
