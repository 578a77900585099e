package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.report.html.Browser;
import dev.loopgauge.screen.web.Sharing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.logging.LogType;

/**
 * The first day of somebody new, on the built-in rig, in a real browser: start, check the patch,
 * measure, late, what if, mend, measure, within, keep, report. Then the same page on a phone, a
 * tablet and a desk's screen, dark and light; pictures of it go to target/.
 */
@NeedsTool({"chromium", "chromedriver"})
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@Timeout(120)
class ScreenInBrowserIT {
  private static final Map<String, Integer> WIDTHS =
      Map.of("phone", 390, "tablet", 820, "desk", 1440);

  /** What README shows is the picture of this test: target/screen-late.png, copied. */
  private static final Path KEPT = Path.of("src/doc/screen.png");

  private static final int README_WIDTH = 1100;
  private static final int README_HEIGHT = 940;
  private static final int LARGEST_BYTES = 200_000;

  private static final Pattern REQUEST =
      Pattern.compile("Network\\.requestWillBeSent\".*?\"url\":\"([^\"]*)\"");

  /** Buttons, lists and fields that are smaller than a fingertip (WCAG 2.2, 2.5.5: 44 pixels). */
  private static final String SMALL =
      "return [...document.querySelectorAll('button, select, input, a, summary')]"
          + ".filter(e => e.getClientRects().length)"
          + ".filter(e => e.getBoundingClientRect().height < 44"
          + " || e.getBoundingClientRect().width < 44).map(e => e.id + ' ' + e.outerHTML)";

  private static final String WIDER = "return [document.documentElement.scrollWidth <= innerWidth]";

  @TempDir private static Path folder;
  private static Served screen;
  private static Browser browser;

  @BeforeAll
  static void serve() throws Exception {
    screen = Served.demo(folder, Sharing.NOBODY);
    browser = Browser.start(folder.resolve("browser"));
    browser.look(1440, 1000, "screen", "dark");
  }

  @AfterAll
  static void end() {
    browser.close();
    screen.close();
  }

  private static String says(String id, String words) {
    return "document.getElementById('" + id + "').innerText.includes('" + words + "')";
  }

  @Test
  @Order(1)
  void aNewcomersDayGoesFromStartToReport() throws Exception {
    browser.open(screen.server.address());
    browser.await(says("sentence", "Nothing measured yet."));
    assertEquals(List.of(""), browser.ask("return [location.search]"), "the token stays in view");

    browser.click("check");
    browser.await(says("patch", "PATCHED: 4 paths are as the sheet says."));

    browser.choose("fault", "block-size=128");
    browser.click("measure");
    browser.await(says("sentence", "LATE by 128 samples (2.67 ms): vocal-house"));
    browser.await(says("chosen", "499.400 ± 0.001 samples"));
    browser.await(says("details", "Check the block size in the host"));
    browser.await(
        says(
            "together",
            "With vocal-house as measured: vocal-house comes 3.18 ms after vocal-wedge: first null"
                + " of the comb at 157 Hz."));
    browser.look(README_WIDTH, README_HEIGHT, "screen", "dark");
    picture("late");
    browser.look(1440, 1000, "screen", "dark");

    browser.click("apart");
    browser.await(says("details", "measured again at a block of 128: 499.4 samples"));
    browser.await("!document.getElementById('apart')");

    browser.choose("if-block", "128");
    browser.await(says("whatif", "If the block were 128: predicted, not measured."));
    browser.await(says("paths", "if so 10.40 ms"));
    picture("what-if");
    browser.click("if-none");
    browser.await("!" + says("paths", "if so"));

    browser.choose("fault", "");
    browser.click("measure-all");
    browser.await(says("sentence", "All 4 paths are within budget and limits."));
    browser.await(says("chosen", "371.400 ± 0.001 samples"));
    browser.await(says("together", "As measured: vocal-house comes 0.51 ms after vocal-wedge"));
    browser.click("path-3");
    browser.await(says("details", "As measured: sound early by"));
    browser.click("path-0");

    browser.type("show", "Lantern, Friday");
    browser.click("keep-before");
    browser.await(says("keeping", "Kept 4 of 4 as before in \"Lantern, Friday\"."));
    browser.await(says("details", "From the journal"));
    String report = browser.ask("return [document.getElementById('report').href]").get(0);
    browser.open(report);
    assertTrue(browser.ask("return [document.title]").get(0).endsWith("delay report"));
    browser.open(report.replace("/report", "/"));
    browser.await(says("sentence", "All 4 paths are within budget and limits."));
  }

  @Test
  @Order(2)
  void everythingIsReachedByKeysAndTheFocusIsSeen() {
    browser.click("path-2");
    browser.await(says("chosen", "vocal-wedge"));
    browser.press(Keys.chord(Keys.SHIFT, Keys.TAB));
    browser.await("document.activeElement.id === 'path-1'");
    assertEquals(
        List.of("true"),
        browser.ask(
            "return [parseFloat(getComputedStyle(document.activeElement).outlineWidth) >= 3]"));
    browser.press(Keys.ENTER);
    browser.await(says("chosen", "vocal-in-ear"));
    browser.await("document.activeElement.id === 'path-1'");
    browser.ask("location.reload(); return []");
    browser.await("document.readyState === 'complete' && " + says("chosen", "vocal-in-ear"));
  }

  @Test
  @Order(3)
  void asksNobodyElseAndComplainsOfNothing() {
    String base = screen.server.address().replaceAll("\\?.*", "");
    List<String> foreign =
        browser.log(LogType.PERFORMANCE).stream()
            .flatMap(message -> REQUEST.matcher(message).results())
            .map(found -> found.group(1))
            .filter(
                address ->
                    !address.isEmpty()
                        && !address.startsWith(base)
                        && !address.startsWith("chrome:"))
            .toList();
    assertEquals(List.of(), foreign);
    assertEquals(List.of(), browser.log(LogType.BROWSER));
  }

  @Test
  @Order(4)
  void fitsAPhoneATabletAndADeskDarkAndLight() throws Exception {
    browser.click("path-0");
    browser.choose("fault", "inverted");
    browser.click("measure");
    browser.await(says("sentence", "INVERTED"));
    for (String scheme : List.of("dark", "light")) {
      for (Map.Entry<String, Integer> width : WIDTHS.entrySet()) {
        String at = width.getKey() + ", " + scheme;
        browser.look(width.getValue(), 1000, "screen", scheme);
        assertEquals(List.of(), browser.ask(SMALL), at);
        assertEquals(List.of("true"), browser.ask(WIDER), at);
        assertEquals(List.of(), browser.accessibilityFaults(), at);
        whole(width.getValue(), scheme, width.getKey());
      }
    }
  }

  @Test
  @Order(5)
  void readmeShowsAPictureThatIsThere() throws IOException {
    assertTrue(Files.readString(Path.of("README.md")).contains("](" + KEPT + ")"));
    assertEquals(README_WIDTH, ImageIO.read(KEPT.toFile()).getWidth());
    assertTrue(Files.size(KEPT) < LARGEST_BYTES, () -> KEPT.toString());
  }

  /** When the server is gone the page says so, and greys what may no longer be so. */
  @Test
  @Order(6)
  void saysWithinThreeSecondsThatTheServerIsGone() {
    browser.look(1440, 1000, "screen", "dark");
    screen.server.close();
    screen.desk.close();
    long closed = System.nanoTime();
    browser.await(says("link", "not from now"));
    double seconds = (System.nanoTime() - closed) / 1e9;
    System.out.printf("page says that the server is gone after %.1f s%n", seconds);
    browser.await("document.body.classList.contains('stale')");
  }

  private static void picture(String name) throws IOException {
    Files.createDirectories(Path.of("target"));
    Files.write(Path.of("target/screen-" + name + ".png"), browser.picture());
  }

  private static void whole(int width, String scheme, String name) throws IOException {
    long height =
        browser.ask("return [document.documentElement.scrollHeight]").stream()
            .mapToLong(Long::parseLong)
            .sum();
    browser.look(width, Math.toIntExact(height), "screen", scheme);
    picture(name + "-" + scheme);
  }
}
