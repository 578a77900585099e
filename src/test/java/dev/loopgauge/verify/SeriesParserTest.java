package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeriesParserTest {
  private static List<SeriesReading> parse(String csv) {
    try {
      return SeriesParser.parse(csv, "rig.csv", Rigs.RATE);
    } catch (SeriesFormatException e) {
      throw new AssertionError(e.getMessage() + " (" + e.hint() + ")", e);
    }
  }

  private static SeriesFormatException refused(String csv) {
    return assertThrows(
        SeriesFormatException.class, () -> SeriesParser.parse(csv, "rig.csv", Rigs.RATE));
  }

  @Test
  void readsAllColumnsInAnyOrder() {
    SeriesReading first =
        parse(
                """
                # our rig, by ear
                Dropouts, cpu-percent, uncertainty-samples, delay-samples, Block-Size
                0, 41.5, 4, 347, 64

                2,,1,475,128
                """)
            .get(0);
    assertEquals(64, first.blockSize());
    assertEquals(347, first.delay().samples());
    assertEquals(2, first.uncertaintySamples());
    assertEquals(OptionalDouble.of(41.5), first.cpuPercent());
    assertEquals(OptionalInt.of(0), first.dropouts());
  }

  @Test
  void cellsLeftEmptyAreUnknown() {
    SeriesReading second =
        parse("block-size,delay-ms,cpu-percent,dropouts\n64,7.2,40,0\n128,9.9,,\n").get(1);
    assertEquals(OptionalDouble.empty(), second.cpuPercent());
    assertEquals(OptionalInt.empty(), second.dropouts());
  }

  /** As spreadsheets of several countries and systems write it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "block-size,delay-ms#64,7.2#128,9.9#",
        "block-size;delay-ms#64;7,2#128;9,9",
        "block-size;delay-ms#64;7.2#128;9.9",
        "\uFEFFblock-size;delay-ms#64;7,2#128;9,9",
        "\"block-size\",\"delay-ms\"#\"64\",\"7.2\"#\"128\",\"9.9\"",
        "delay-ms;block-size#7,2;64.0#9,9;128"
      })
  void semicolonsDecimalCommasAndByteOrderMarksAreUnderstood(String csv) {
    for (String lineEnd : List.of("\n", "\r\n", "\r")) {
      List<SeriesReading> readings = parse(csv.replace("#", lineEnd));
      assertEquals(2, readings.size());
      assertEquals(64, readings.get(0).blockSize());
      assertEquals(7.2, readings.get(0).delay().ms(), 1e-12);
      assertEquals(9.9, readings.get(1).delay().ms(), 1e-12);
    }
  }

  @Test
  void tabsSeparateToo() {
    assertEquals(7.2, parse("block-size\tdelay-ms\n64\t7,2\n128\t9,9").get(0).delay().ms(), 1e-12);
  }

  /** Half of its last digit: 0.05 ms is 2.4 samples at 48 kHz, 0.5 ms is 24. */
  @Test
  void delaysAreAsGoodAsTheirDigits() {
    List<SeriesReading> coarse = parse("block-size,delay-ms\n64,7.2\n128,10");
    assertEquals(2.4 / Math.sqrt(3), coarse.get(0).uncertaintySamples(), 1e-9);
    assertEquals(24 / Math.sqrt(3), coarse.get(1).uncertaintySamples(), 1e-9);
    List<SeriesReading> fine = parse("block-size,delay-ms\n64,7.2208\n128,9.8875");
    assertEquals(0.5 / Math.sqrt(3), fine.get(0).uncertaintySamples(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | 1: expected a line that names the columns",
        "block-size,delay-ms | 1: expected readings at two block sizes or more, found none",
        "block-size,delay-ms#64,7.2 | 2: expected readings at two block sizes or more, found one",
        "block-size,delay-ms#64,7.2#64,7.3 | 3: expected readings at two block sizes or more, found one block size, 64",
        "block-size,delay-ms#64,fast#128,9.9 | 2: expected a number as delay-ms, found 'fast'",
        "block-size,delay-ms#64,7.2 ms#128,9.9 | 2: expected a number as delay-ms, found '7.2 ms'",
        "block-size,delay-ms#64,7.2#128, | 3: expected a number as delay-ms, found nothing",
        "block-size,delay-ms#64,-7.2#128,9.9 | 2: expected a delay-ms from 0, found -7.2",
        "block-size,delay-ms#64,NaN#128,9.9 | 2: expected a number as delay-ms, found 'NaN'",
        "block-size,delay-ms#64,1e10#128,9.9 | 2: expected a delay-ms from 0",
        "block-size,delay-ms#0,7.2#128,9.9 | 2: expected a whole block-size from 1, found 0",
        "block-size,delay-ms#64.5,7.2#128,9.9 | 2: expected a whole block-size from 1, found 64.5",
        "block-size,delay-ms#64,7,2#128,9,9 | 2: expected 2 columns, found 3",
        "block-size;delay-ms#64;1.007,2#128;9 | 2: expected a number as delay-ms, found '1.007,2'",
        "block-size,delay-ms#64#128,9.9 | 2: expected 2 columns, found 1",
        "block-size,delay#64,7.2 | 1: expected the name of a column, found 'delay'",
        "64,7.2#128,9.9 | 1: expected the name of a column, found '64'",
        "block-size,delay-ms,delay-ms#64,7,7 | 1: expected each column once, found 'delay-ms' twice",
        "block-size,cpu-percent#64,7 | 1: expected a column delay-ms or delay-samples, found neither",
        "block-size,delay-ms,delay-samples#64,7,7 | 1: expected a column delay-ms or delay-samples, found both",
        "delay-ms#7 | 1: expected a column block-size, found none",
        "block-size,delay-ms,dropouts#64,7,0.5 | 2: expected a whole dropouts from 0, found 0.5"
      })
  void whatIsNoSeriesIsRefusedWhereItIsWrong(String csv, String message) {
    SeriesFormatException refused = refused(csv.replace("#", "\n"));
    assertTrue(refused.getMessage().startsWith("rig.csv:" + message), refused.getMessage());
    assertTrue(!refused.hint().isBlank() && !refused.getMessage().contains("\n"));
  }

  @Test
  void moreReadingsThanAnyoneTakesAreRefused() {
    String many = "block-size,delay-ms\n" + "64,7.2\n".repeat(SeriesParser.MOST_READINGS + 1);
    assertTrue(refused(many).getMessage().contains("at most 200 readings"));
    assertTrue(refused("x".repeat(SeriesParser.LONGEST_FILE + 1)).getMessage().length() < 200);
  }

  @Test
  void anyTextIsReadOrRefused() {
    String good = "block-size;delay-ms;dropouts\n64;7,2;0\n\"128\";9.9;1\n";
    Random random = new Random(5);
    for (int i = 0; i < 5000; i++) {
      StringBuilder text = new StringBuilder(good);
      for (int edits = 1 + random.nextInt(4); edits > 0; edits--) {
        int at = random.nextInt(text.length());
        text.replace(
            at,
            at + random.nextInt(2),
            "\"\n;,#-e.\u00000\uD800\u2028".charAt(random.nextInt(12)) + "");
      }
      try {
        SeriesParser.parse(text.toString(), "rig.csv", Rigs.RATE);
      } catch (SeriesFormatException e) {
        assertTrue(!e.getMessage().contains("\n"), "seed 5, text " + i + ": " + e.getMessage());
      }
    }
  }
}
