package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.live.LiveChoice;
import dev.loopgauge.job.live.StimulusChoice;
import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.report.html.Browser;
import dev.loopgauge.screen.web.Sharing;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The screen in a real browser, on a real audio server: consent, a measurement, stop, and gone. */
@NeedsAudioServer
@NeedsTool({"chromium", "chromedriver"})
@Timeout(300)
@SuppressWarnings("try")
class ScreenOnServerIT {
  private static final int TAKES = 50;
  private static final double SECONDS = 0.2;

  /** Begins a take, agrees, and gives the ms from its last frame to the page that shows it. */
  private static final String TAKE =
      """
      const at = () => document.getElementById('measured-at')?.dateTime ?? '';
      const before = at();
      new MutationObserver((changes, watch) => {
        document.getElementById('agree')?.click();
        if (at() !== before) {
          watch.disconnect();
          done(Date.now() - Date.parse(at()));
        }
      }).observe(document.body, {childList: true, subtree: true});
      document.getElementById('measure').click();
      """;

  @TempDir private Path folder;

  private Path chain() throws Exception {
    return Files.writeString(
        folder.resolve("quarry.yaml"),
        """
        chain: Quarry Stage
        sample-rate: 48000
        block-size: 256
        reference: { send: 1, return: 1 }
        stages:
          desk: { samples: 300 }
        paths:
          lead: { listener: house, stages: [desk], patch: { send: 2, return: 2 } }
        """);
  }

  private static StimulusChoice stimulus(double seconds, int repeats) {
    return new StimulusChoice(
        Optional.empty(),
        Optional.of(seconds),
        Optional.empty(),
        false,
        Optional.of(repeats),
        Optional.of(0.05));
  }

  private Served served(StimulusChoice stimulus) throws Exception {
    LiveChoice live =
        new LiveChoice(
            Optional.empty(), Served.device("jack", Optional.of("rig")), stimulus);
    return Served.of(chain(), folder, live, Adapters.ofThisComputer(), Sharing.NOBODY);
  }

  private static String says(String id, String words) {
    return "document.getElementById('" + id + "').innerText.includes('" + words + "')";
  }

  @Test
  void measuresAfterConsentAndShowsTheVerdictSoonAfterTheLastFrame() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 256);
        DelayClient rig = DelayClient.start(server, "rig", DelayLine.of(0), DelayLine.of(300));
        Served screen = served(stimulus(SECONDS, 1));
        Browser browser = Browser.start(folder.resolve("browser"))) {
      browser.open(screen.server.address());
      browser.await(says("sentence", "Nothing measured yet."));
      browser.click("measure");
      browser.await(says("doing", "Sends 1, 2 of \\\"rig\\\" play"));
      browser.await(says("doing", "Mute the loudspeakers, take in-ears out."));
      browser.click("agree");
      browser.await(says("sentence", "The path is within budget and limits."));
      browser.await(says("chosen", "300.0"));
      double[] ms = new double[TAKES];
      for (int i = 0; i < TAKES; i++) {
        ms[i] = browser.number(TAKE);
      }
      Arrays.sort(ms);
      System.out.printf(
          "last frame to verdict on the page, %d takes of %.1f s: median %.0f ms, most %.0f ms%n",
          TAKES, SECONDS, ms[TAKES / 2], ms[TAKES - 1]);
      assertTrue(ms[0] > 0, "shown before it was heard");
    }
  }

  @Test
  void stopEndsWhatPlaysAndTheServersEndIsTold() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 256);
        DelayClient rig = DelayClient.start(server, "rig", DelayLine.of(0), DelayLine.of(300));
        Served screen = served(stimulus(20, 3));
        Browser browser = Browser.start(folder.resolve("browser"))) {
      browser.open(screen.server.address());
      browser.await(says("sentence", "Nothing measured yet."));
      browser.click("measure");
      browser.await("document.getElementById('agree')");
      browser.click("agree");
      browser.await(says("doing", "return 2"));
      browser.press(Keys.ESCAPE);
      browser.await(says("doing", "Stopped."));
      server.close();
      browser.await(says("link", "The sound is gone: these numbers are not from now."));
    }
  }
}
