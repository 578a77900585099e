package dev.loopgauge.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.report.form.Sheet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScreenTextTest {
  private static final String WORDS =
      "Measured from the send to the return, through stage box, desk and host, and back again by"
          + " the amplifier of the wedge that stands in front of the singer.";

  private static String sheet() {
    return new Sheet()
        .line(WORDS)
        .row("delay", "4.2 ms")
        .row("explained by", WORDS)
        .gap()
        .asIs("  path   samples      \u00b1      ms  standing")
        .asIs("  vocal  118.000  0.001  2.4583  good")
        .toString();
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 50, 66, 79, 81, 100, 132, 500})
  void noLineIsWiderAndNoWordIsLost(int columns) {
    String fitted = ScreenText.fitted(sheet(), columns);
    assertTrue(
        fitted.lines().allMatch(line -> line.length() <= Math.max(columns, 45)),
        () -> columns + ":\n" + fitted);
    assertEquals(squeezed(sheet()), squeezed(fitted));
  }

  @Test
  void wordsGoOnBehindTheirLabel() {
    String fitted = ScreenText.fitted(sheet(), 60);
    List<String> row =
        fitted.lines().dropWhile(line -> !line.startsWith("  explained by")).limit(3).toList();
    assertTrue(row.get(1).matches(" {16}\\S.*") && row.get(2).matches(" {16}\\S.*"), fitted);
  }

  @Test
  void aWideTerminalIsUsed() {
    String fitted = ScreenText.fitted(sheet(), 500);
    assertEquals(WORDS, fitted.lines().findFirst().orElseThrow());
    assertEquals(6, fitted.lines().count(), fitted);
  }

  @Test
  void eightyColumnsStayAsTheyAre() {
    assertEquals(sheet(), ScreenText.fitted(sheet(), 80));
  }

  @Test
  void onlyATerminalIsFollowed() {
    Console console = new Console(null, null, null, false, Map.of("COLUMNS", "50"));
    assertEquals(sheet(), console.shown(sheet()));
    Console narrow = new Console(null, null, null, true, Map.of("COLUMNS", "50"));
    assertTrue(narrow.shown(sheet()).lines().allMatch(line -> line.length() <= 50));
  }

  @ParameterizedTest
  @CsvSource({"24 80, 80", "40 132, 132", "0 0, ", "'', ", "stty: no, "})
  void theTerminalIsAsked(String told, String columns) {
    assertEquals(Optional.ofNullable(columns), TerminalWidth.size(told));
  }

  @ParameterizedTest
  @CsvSource({"100, 100", "20, 40", "x, ", "'', ", "99999, "})
  void columnsThatAreNoneAreLeft(String said, Integer columns) {
    assertEquals(Optional.ofNullable(columns), TerminalWidth.columns(Map.of("COLUMNS", said)));
  }
}
