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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A watch that is turned on and off on the page, in a real browser. */
@NeedsTool({"chromium", "chromedriver"})
@Timeout(120)
class WatchInBrowserIT {
  /** The fault of the list that changes the block size under a watch. */
  private static final String JUMP = "block-size=128@12";

  @TempDir private Path folder;

  private static String says(String id, String words) {
    return "document.getElementById('" + id + "').innerText.includes('" + words + "')";
  }

  private static void picture(Browser browser, String name) throws IOException {
    Files.createDirectories(Path.of("target"));
    Files.write(Path.of("target/screen-" + name + ".png"), browser.picture());
  }

  @Test
  void onTheBuiltInRigTellsAJumpWithItsCauseAndEndsByEscape() throws Exception {
    try (Served screen = Served.demo(folder, Sharing.NOBODY);
        Browser browser = Browser.start(folder.resolve("browser"))) {
      browser.look(1440, 1400, "screen", "dark");
      browser.open(screen.server.address());
      browser.await(says("sentence", "Nothing measured yet."));
      browser.click("measure-all");
      browser.await(says("doing", "reference, return 1"));
      picture(browser, "measuring");
      browser.await(says("sentence", "All 4 paths are within budget and limits."));
      browser.choose("fault", JUMP);
      browser.click("watching");
      browser.await(says("doing", "It plays nothing."));
      browser.await(says("doing", "reference, return 1"));
      browser.await(says("doing", "vocal-in-ear, return 3"));
      browser.await(says("watch", "371.4"));
      browser.await("document.querySelector('#measure:disabled')");
      Asker own = new Asker(screen.server.address());
      String refused = own.post("/do/measure", "{}");
      assertEquals(409, Asker.code(refused), refused);
      assertTrue(refused.contains("Watching is under way already"), refused);
      browser.await(says("watch", "JUMPED +128.00"));
      browser.await(says("watch", "block"));
      browser.await(says("sentence", "JUMPED +128.00 ± 0.03 samples (+2.67 ms) at"));
      browser.await(says("chosen", "Not from now: since then, while watched: JUMPED"));
      picture(browser, "watch");
      assertEquals(List.of(), browser.accessibilityFaults());
      browser.look(390, 1800, "screen", "light");
      assertEquals(List.of(), browser.accessibilityFaults());
      picture(browser, "watch-phone");
      Path chain = folder.resolve("lantern-theatre.yaml");
      Files.writeString(chain, Files.readString(chain) + "\n# Another edition.\n");
      browser.await(says("watch", "The chain file has changed since"));
      browser.press(Keys.ESCAPE);
      browser.await(says("watch", "Watched last"));
      browser.await(says("watch", "CHANGED:"));
      browser.choose("fault", "");
      browser.click("measure-all");
      browser.await(says("sentence", "All 4 paths are within budget and limits."));
    }
  }

  @Test
  void whoMayLookOnlyCanEndItButNotBeginIt() throws Exception {
    try (Served screen = Served.demo(folder, Sharing.LOOK)) {
      List<String> shared = screen.server.shared();
      Asker other = new Asker(shared.get(shared.size() - 1));
      assertEquals(403, Asker.code(other.post("/do/watch", "{}")));
      try (Following page = new Following(other)) {
        screen.desk.watch();
        page.until("\"step\":\"watching\"");
        assertEquals(200, Asker.code(other.post("/do/stop", "{}")));
        page.until("\"step\":\"idle\"");
      }
    }
  }
}
