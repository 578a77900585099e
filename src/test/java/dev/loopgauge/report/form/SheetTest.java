package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SheetTest {
  @Test
  void wrapsBetweenWordsUnderTheirOwnColumn() {
    String words = "a sentence of words ".repeat(9).strip();
    String text = new Sheet().row("try", words).toString();
    assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
    assertTrue(text.lines().skip(1).allMatch(line -> line.matches(" {15}\\S.*")), text);
    assertEquals(words, text.replaceAll("\\s+", " ").strip().substring("try ".length()));
  }

  @Test
  void keepsColumnsOfFiguresTogether() {
    assertEquals(
        "  measured     1 samples    2 ms\n",
        new Sheet().row("measured", "1 samples    2 ms").toString());
  }

  @Test
  void aWordLongerThanALineStaysWhole() {
    String path = "/folder".repeat(20);
    assertEquals("found\n  " + path + "\n", new Sheet().line("found " + path).toString());
  }
}
