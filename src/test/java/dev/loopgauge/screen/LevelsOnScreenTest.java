package dev.loopgauge.screen;

import dev.loopgauge.screen.web.Sharing;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The levels of reference and return while the built-in rig is measured. */
@Timeout(60)
class LevelsOnScreenTest {
  private static final String REFERENCE = "\"name\":\"reference, return 1\",";
  private static final String RETURN = "\"name\":\"vocal-house, return 2\",";

  @TempDir private Path folder;

  private void shows(String fault, String... words) throws Exception {
    try (Served screen = Served.demo(folder, Sharing.NOBODY);
        Following page = new Following(new Asker(screen.server.address()))) {
      screen.desk.practise(fault);
      screen.desk.check("vocal-house");
      page.until("\"step\":\"working\"");
      page.until("\"step\":\"idle\"");
      new Asker(screen.server.address()).post("/do/measure", "{\"path\":\"vocal-house\"}");
      for (String one : words) {
        page.until(one);
      }
    }
  }

  @Test
  void growWhileATakeGrows() throws Exception {
    String loud = "\"figure\":\"-20 dBFS\",\"percent\":67,\"clipped\":false,\"heard\":true}";
    shows("", RETURN + loud + ",{" + REFERENCE + loud, "\"step\":\"idle\"");
  }

  @Test
  void sayWhereNothingIsHeard() throws Exception {
    shows(
        "silent",
        RETURN + "\"figure\":\"below -60 dBFS\",\"percent\":0,\"clipped\":false,\"heard\":false");
  }

  @Test
  void sayWhatClippedAndHoldIt() throws Exception {
    shows(
        "gain=30",
        RETURN + "\"figure\":\"0 dBFS\",\"percent\":100,\"clipped\":true,\"heard\":true",
        "\"step\":\"idle\"");
  }
}
