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

  /** 2 + 40, 2 + 20 and 2 + 20 columns: with both that may go 86, without the latter 64. */
  @Test
  void leavesColumnsOutWhereLinesAreWiderThanTheScreen() {
    Table<String> table =
        new Table<String>()
            .words("a".repeat(40), row -> row)
            .words("b".repeat(20), row -> row)
            .ifRoom()
            .words("c".repeat(20), row -> row)
            .ifRoom();
    assertEquals(64, table.lines(List.of("x")).get(0).length());
    assertEquals(42, table.lines(List.of("x".repeat(75))).get(0).strip().length() + 2);
    assertEquals(77, table.lines(List.of("x".repeat(75))).get(1).length());
  }
}
