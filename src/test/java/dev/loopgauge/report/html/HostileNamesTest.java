package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.junit.jupiter.api.Test;

class HostileNamesTest {
  private static final String SCRIPT = "</title><script>alert(\"x\")</script>'&amp;";

  private static String quoted(String text) {
    try {
      return JSON.std.asString(text).replaceAll("^\"|\"$", "");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A show whose every name is this. */
  static ReportDocument named(String name) {
    String late =
        Documents.LATE
            .replace("vocal-house", quoted(name))
            .replace("is a wedge open?", quoted(name));
    String budget =
        Documents.BUDGET.replace("vocal-house", quoted(name)).replace("console", quoted(name));
    return new ReportDocument(
        name,
        "0.1.0",
        List.of(Documents.reading(name, late), Documents.reading("budget.json", budget)));
  }

  @Test
  void showsMarkupAsText() {
    String page = named(SCRIPT).html();
    assertFalse(page.contains("<script"), page);
    assertTrue(
        page.contains(
            "&lt;/title&gt;&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&#x27;&amp;amp;"),
        page);
  }

  @Test
  void keepsNamesFromTurningWhatStandsAroundThem() {
    String page = named("stage \u202eleft").html();
    assertTrue(page.contains("<h1><bdi>stage [U+202E]left</bdi></h1>"), page);
    assertFalse(page.contains("\u202e"), page);
  }

  @Test
  void makesControlCharactersVisible() {
    assertEquals(
        "a\u2400b\u2421c\u241bd\ufffde\ufffd", Escaping.visible("a\0b\u007fc\u001bd\u0085e\ud800"));
    assertEquals("line\n\ttab, Größe, 🎚", Escaping.visible("line\n\ttab, Größe, 🎚"));
  }

  @Test
  void keepsTheTerminalFromObeyingNames() {
    String text = named("stage\u001b[2J").text();
    assertFalse(text.contains("\u001b"), text);
  }

  @Test
  void saysHowMuchOfALongNameItShows() {
    String page = named("x".repeat(1_000_000)).html();
    assertTrue(page.length() < 100_000, "" + page.length());
    assertTrue(page.contains("… (the first 200 of 1000000 characters)"));
  }

  @Test
  void keepsCellsOfSpreadsheetsApart() {
    String csv = named("a,\"b\"\r\nc").csv();
    assertTrue(csv.contains("\"a,\"\"b\"\"\r\nc\""), csv);
  }
}
