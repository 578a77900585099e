package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class TableTest {
  @Test
  void alignsWordsLeftAndFiguresRight() {
    List<String> lines =
        new Table<String>()
            .words("word", word -> word)
            .figures("n", word -> Integer.toString(word.length()))
            .words("end", word -> "x")
            .lines(List.of("a", "bühnenkasten-x"));
    assertEquals(
        List.of("  word             n  end", "  a                1  x", "  bühnenkasten-x  14  x"),
        lines);
  }
}
