package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.outside.NeedsTool;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.logging.LogType;

/** Reports of several shows in a real browser: on a phone, on screens and on paper. */
@NeedsTool({"chromium", "chromedriver"})
@Timeout(120)
class ReportInBrowserIT {
  private static final List<Integer> WIDTHS = List.of(360, 390, 800, 1440);

  /** A4 is 210 mm wide; less two margins of 15 mm that are 180 mm, at 96 pixels to the inch. */
  private static final int PAPER = 680;

  private static final Pattern PDF_PAGE = Pattern.compile("/Type\\s*/Page\\b");

  private static final Pattern REQUEST =
      Pattern.compile("Network\\.requestWillBeSent\".*?\"url\":\"([^\"]*)\"");

  @TempDir private static Path folder;
  private static Browser browser;

  @BeforeAll
  static void startBrowser() {
    browser = Browser.start(folder.resolve("data"));
  }

  @AfterAll
  static void stopBrowser() {
    browser.close();
  }

  static Stream<ReportDocument> reports() {
    return Stream.of(
        Shows.theatre(),
        Shows.field(),
        HostileNamesTest.named("</style><script>document.title='owned'</script>\"'&lt;"),
        HostileNamesTest.named("stage \u202eleft\u0007 " + "m".repeat(2_000)),
        HostileNamesTest.named("舞台 一号 ".repeat(40)));
  }

  private static Path open(ReportDocument report) throws IOException {
    Path file = Files.createTempFile(folder, "report", ".html");
    Files.writeString(file, report.html());
    browser.log(LogType.PERFORMANCE);
    browser.log(LogType.BROWSER);
    browser.open(file);
    return file;
  }

  @ParameterizedTest
  @MethodSource("reports")
  void asksForNothingAndComplainsOfNothing(ReportDocument report) throws IOException {
    Path file = open(report);
    List<String> asked =
        browser.log(LogType.PERFORMANCE).stream()
            .flatMap(message -> REQUEST.matcher(message).results())
            .map(found -> found.group(1))
            .toList();
    assertEquals(List.of(file.toUri().toString()), asked);
    assertEquals(List.of(), browser.log(LogType.BROWSER));
    assertTrue(browser.ask("return [document.title]").get(0).endsWith("delay report"));
  }

  @ParameterizedTest
  @MethodSource("reports")
  void cutsAndOverlapsNoText(ReportDocument report) throws IOException {
    open(report);
    for (boolean open : List.of(true, false)) {
      browser.unfold(open);
      assertTextsApart();
    }
  }

  private static void assertTextsApart() throws IOException {
    String script = Browser.resource("text-boxes.js");
    for (int width : WIDTHS) {
      browser.look(width, "screen", "light");
      assertEquals(List.of(), browser.ask(script), "at " + width + " pixels");
    }
    browser.look(PAPER, "print", "light");
    assertEquals(List.of(), browser.ask(script), "on paper");
  }

  @ParameterizedTest
  @MethodSource("reports")
  void isOpenToAll(ReportDocument report) throws IOException {
    open(report);
    for (Map.Entry<String, Integer> look : Map.of("light", 360, "dark", 800).entrySet()) {
      browser.look(look.getValue(), "screen", look.getKey());
      for (boolean open : List.of(false, true)) {
        browser.unfold(open);
        assertEquals(List.of(), browser.accessibilityFaults(), look.getKey());
      }
    }
  }

  /** With the faults that say most, and with every path at fault. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "--fault=lead-house:inverted --fault=balcony:noise=-30 --fault=truck-mix:silent",
        "--fault=inverted"
      })
  void twelvePathsPrintOnFourPages(String faults, @TempDir Path show) throws IOException {
    TwelvePaths field = new TwelvePaths(show);
    field.round("before");
    field.round("after", faults.split(" "));
    browser.open(field.page("page.html", "--by=Ada Winter"));
    assertTextsApart();
    String pdf = new String(browser.printed(), StandardCharsets.ISO_8859_1);
    long pages = PDF_PAGE.matcher(pdf).results().count();
    assertTrue(pages >= 2 && pages <= 4, pages + " pages");
  }

  @Test
  void followingALinkUnfoldsItsPath() throws IOException {
    open(Shows.theatre());
    browser.look(800, "screen", "light");
    String open = "return [document.getElementById('path-2').closest('details').open]";
    assertEquals(List.of("false"), browser.ask(open));
    browser.ask("document.querySelector('a[href=\"#path-2\"]').click(); return []");
    assertEquals(List.of("true"), browser.ask(open));
  }

  @Test
  void thisTestSeesWhatOverlapsAndWhatIsCut() throws IOException {
    Path file = folder.resolve("faulty.html");
    Files.writeString(
        file,
        """
        <!DOCTYPE html><html><title>x</title><body>
        <p>Ten lines</p><p>of text</p><p>that is</p><p>all in</p><p>its place</p>
        <p style="margin-top:-30px">overlapping</p>
        <p style="width:2000px;white-space:nowrap">%s</p>
        <p style="width:40px;overflow:hidden;white-space:nowrap">hidden beyond its box</p>
        </body></html>
        """
            .formatted("wide ".repeat(400)));
    browser.open(file);
    browser.look(800, "screen", "light");
    String faults = browser.ask(Browser.resource("text-boxes.js")).toString();
    for (String kind :
        List.of("overlap: its place", "wider than", "outside: wide", "cut: hidden")) {
      assertTrue(faults.contains(kind), kind + " in " + faults);
    }
    assertTrue(browser.accessibilityFaults().toString().contains("html-has-lang"));
  }
}
