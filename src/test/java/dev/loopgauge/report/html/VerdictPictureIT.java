package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.outside.NeedsTool;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Makes README's picture: what the demo prints of its two measurements, on a dark screen. It is
 * written to target/demo-verdict.png and bears the text that it was drawn from; src/doc keeps one,
 * which must be of the same text.
 */
@NeedsTool({"chromium", "chromedriver"})
@Timeout(120)
class VerdictPictureIT {
  private static final Path KEPT = Path.of("src/doc/demo-verdict.png");
  private static final int WIDTH = 820;
  private static final int LARGEST_BYTES = 150_000;

  /** What the program writes before and after a coloured word, and what a page has for it. */
  private static final Map<String, String> COLOURS =
      Map.of(
          "\u001b[1m\u001b[32m", "<b style='color:#5fd38d'>",
          "\u001b[1m\u001b[33m", "<b style='color:#f2c14e'>",
          "\u001b[1m\u001b[31m", "<b style='color:#ff7b72'>",
          "\u001b[39m\u001b[21m", "</b>");

  @TempDir private Path folder;

  @Test
  void showsTheVerdictsOfTheDemo() throws Exception {
    String text = verdicts();
    Path page = Files.writeString(folder.resolve("verdict.html"), page(text));
    byte[] picture;
    try (Browser browser = Browser.start(folder.resolve("browser"))) {
      browser.open(page);
      browser.look(WIDTH, "screen", "dark");
      long height =
          browser.ask("return [document.body.offsetHeight]").stream()
              .mapToLong(Long::parseLong)
              .sum();
      browser.look(WIDTH, Math.toIntExact(height), "screen", "dark");
      assertEquals(
          "true", browser.ask("return [document.body.scrollWidth <= innerWidth]").get(0), "width");
      picture = browser.picture();
    }
    byte[] told = PictureText.added(text, picture);
    Path made = Files.write(Path.of("target", KEPT.getFileName().toString()), told);
    assertTrue(told.length < LARGEST_BYTES, () -> told.length + " bytes");
    assertTrue(colours(told) > 20, "no text was drawn");
    assertEquals(
        Optional.of(text),
        PictureText.of(Files.readAllBytes(KEPT)),
        "copy " + made + " over " + KEPT);
  }

  @Test
  void readmeShowsAPictureThatIsThere() throws Exception {
    assertTrue(Files.readString(Path.of("README.md")).contains("](" + KEPT + ")"));
    assertEquals(WIDTH, ImageIO.read(KEPT.toFile()).getWidth());
    assertTrue(Files.size(KEPT) < LARGEST_BYTES, () -> KEPT.toString());
  }

  private String verdicts() throws Exception {
    Path err = folder.resolve("err");
    Run run = Jar.end(Jar.start(folder, Map.of(), err, "demo", "--color=always"), err);
    assertEquals(0, run.exitCode(), run.err());
    String out = run.out();
    return out.substring(out.indexOf("2. "), out.indexOf("Chain file, recordings")).strip();
  }

  private static String page(String text) {
    String html = text.replace("&", "&amp;").replace("<", "&lt;");
    for (Map.Entry<String, String> colour : COLOURS.entrySet()) {
      html = html.replace(colour.getKey(), colour.getValue());
    }
    assertTrue(html.indexOf('\u001b') < 0, html);
    return """
        <!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>demo</title>
        <body style="margin:0;background:#14171c">
        <pre style="margin:0;padding:18px;color:#d7dae0;will-change:transform;font:15px/1.35 'DejaVu Sans Mono',monospace">
        %s</pre></body></html>
        """
        .formatted("$ loopgauge demo\n...\n" + html);
  }

  private static long colours(byte[] picture) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture));
    int width = image.getWidth();
    int height = image.getHeight();
    return Arrays.stream(image.getRGB(0, 0, width, height, null, 0, width)).distinct().count();
  }
}
