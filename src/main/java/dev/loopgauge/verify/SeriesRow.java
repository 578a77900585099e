package dev.loopgauge.verify;

import de.siegmar.fastcsv.reader.CsvRecord;
import dev.loopgauge.chain.Conditions;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One line of a series as it is written. */
record SeriesRow(
    int blockSize,
    BigDecimal delay,
    OptionalDouble uncertaintySamples,
    OptionalDouble cpuPercent,
    OptionalInt dropouts) {
  private static final BigDecimal LARGEST = BigDecimal.valueOf(1e9);

  static SeriesRow of(CsvRecord record, SeriesColumns columns) throws SeriesFormatException {
    Cells cells = new Cells(record, columns);
    cells.checkCount();
    int blockSize = cells.whole(SeriesColumns.BLOCK_SIZE, 1, Conditions.LARGEST_BLOCK);
    return new SeriesRow(
        blockSize,
        cells.number(columns.delay()),
        cells.optional(SeriesColumns.UNCERTAINTY),
        cells.optional(SeriesColumns.CPU),
        cells.given(SeriesColumns.DROPOUTS)
            ? OptionalInt.of(cells.whole(SeriesColumns.DROPOUTS, 0, Integer.MAX_VALUE))
            : OptionalInt.empty());
  }

  /** The cells of one line, by the names of their columns. */
  private record Cells(CsvRecord record, SeriesColumns columns) {
    void checkCount() throws SeriesFormatException {
      int expected = columns.names().size();
      if (record.getFieldCount() != expected) {
        throw refuse(
            expected + " columns",
            String.valueOf(record.getFieldCount()),
            "with decimal commas, separate the columns by semicolons");
      }
    }

    boolean given(String column) {
      return text(column).isPresent();
    }

    private Optional<String> text(String column) {
      int at = columns.names().indexOf(column);
      return at < 0
          ? Optional.empty()
          : Optional.of(record.getField(at).strip()).filter(text -> !text.isEmpty());
    }

    OptionalDouble optional(String column) throws SeriesFormatException {
      return given(column)
          ? OptionalDouble.of(number(column).doubleValue())
          : OptionalDouble.empty();
    }

    int whole(String column, int lowest, int highest) throws SeriesFormatException {
      BigDecimal number = number(column);
      try {
        int whole = number.intValueExact();
        if (whole >= lowest && whole <= highest) {
          return whole;
        }
      } catch (ArithmeticException e) {
        // Told below, together with numbers out of range.
      }
      throw refuse(
          "a whole " + column + " from " + lowest, text(column).orElse(""), "write it as 128");
    }

    BigDecimal number(String column) throws SeriesFormatException {
      String text = text(column).orElse("");
      BigDecimal number = parsed(column, text);
      if (number.signum() < 0 || number.compareTo(LARGEST) > 0) {
        throw refuse(
            "a " + column + " from 0", text, "delays, loads and counts are never negative");
      }
      return number;
    }

    private BigDecimal parsed(String column, String text) throws SeriesFormatException {
      boolean decimalComma = columns.separator() != ',' && !text.contains(".");
      try {
        return new BigDecimal(decimalComma ? text.replace(',', '.') : text);
      } catch (NumberFormatException e) {
        throw refuse(
            "a number as " + column,
            text.isEmpty() ? "nothing" : SeriesColumns.quoted(text),
            "write plain numbers such as 7.2, without units");
      }
    }

    private SeriesFormatException refuse(String expected, String found, String hint) {
      return new SeriesFormatException(
          columns.file(), record.getStartingLineNumber(), expected, found, hint);
    }
  }
}
