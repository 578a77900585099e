package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.screen.web.Sharing;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Where a first measurement leaves something open, the screen offers the one that settles it. */
@Timeout(60)
class FurtherMeasurementTest {
  private static final String PATH = "\"path\":\"vocal-house\"";

  @TempDir private Path folder;

  @Test
  void asksWhichOfTwoArrivalsIsThePathAndMeasuresThat() throws Exception {
    try (Served screen = Served.demo(folder, Sharing.NOBODY);
        Following page = new Following(new Asker(screen.server.address()))) {
      Asker own = new Asker(screen.server.address());
      screen.desk.practise("second-arrival=2.5:-2");
      own.post("/do/measure", "{" + PATH + "}");
      page.until("\"openArrival\":true", "\"step\":\"idle\"");
      assertEquals(409, Asker.code(own.post("/do/measure", "{" + PATH + ",\"arrival\":\"x\"}")));
      own.post("/do/measure", "{" + PATH + ",\"arrival\":\"first\"}");
      page.until("\"openArrival\":false", "\"step\":\"idle\"");
    }
  }
}
