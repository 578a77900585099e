package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.signal.Decibels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes of 1.3 s, five of which fill a tenth of a minute. */
class SoakCommandTest {
  @TempDir Path data;

  @Test
  void aCleanSoakPlaysSoftlyUntilItsTimeIsOver() {
    ScriptedSession card = session("java-sound", 256, delay(595));
    Run run = soak(card);

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals("measured", run.json().get("outcome"));
    assertEquals("good", standing(run));
    Map<?, ?> soak = soak(run);
    assertEquals(card.takes().size(), soak.get("takes"));
    assertTrue(number(soak, "heardSeconds") >= 6, soak.toString());
    assertEquals(number(soak, "heardSeconds"), number(soak, "longestCleanSeconds"));
    assertEquals(595, number(soak, "delaySamples"), 0.05);
    assertNull(soak.get("worst"));
    assertEquals(-40, Decibels.ofFactor(card.takes().get(0).sends().get(0).peak()), 0.1);
    assertTrue(run.err().contains("of 0.1 min: 595.00 samples, clean"), run.err());
  }

  @Test
  void countsLostSoundAndStepsAndNamesTheWorst() {
    Wires lossy = delay(595).but(Incident.Kind.DROPOUT, "The card lost time once.");
    Run run =
        soak(session("java-sound", 256, delay(595), delay(595), lossy, delay(659), delay(659)));

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    Map<?, ?> soak = soak(run);
    assertEquals(1, soak.get("dropouts"));
    assertEquals(1, soak.get("steps"));
    Map<?, ?> worst = (Map<?, ?>) soak.get("worst");
    assertEquals("dropout", worst.get("kind"));
    assertEquals("The card lost time once.", worst.get("text"));
    Map<?, ?> step = (Map<?, ?>) ((List<?>) soak.get("moments")).get(1);
    assertEquals(64, number(step, "movedSamples"), 0.05);
    assertEquals(
        3 * number(soak, "heardSeconds") / (int) soak.get("takes"),
        number(step, "atSeconds"),
        0.01);
    assertEquals(64, number(soak, "rangeSamples"), 0.05);
  }

  @Test
  void aFailedTakeIsCountedWhereTheSessionGoesOn() {
    Run run =
        soak(
            session(
                "java-sound",
                256,
                delay(595),
                ScriptedSession.failing(CaptureException.Kind.SHORT),
                delay(595)));

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    assertEquals("measured", run.json().get("outcome"));
    assertEquals("bad", standing(run));
    assertEquals(1, soak(run).get("failedTakes"));
  }

  @Test
  void aCardThatGoesAwayEndsItWithWhatWasSeen() {
    Run run =
        soak(
            session(
                "java-sound",
                256,
                delay(595),
                delay(595),
                ScriptedSession.failing(CaptureException.Kind.GONE)));

    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    assertEquals(3, soak(run).get("takes"));
    assertEquals("scripted: GONE", soak(run).get("endedBy"));
  }

  @Test
  void aCardThatNeverPlaysIsAFailure() {
    Run run = soak(session("java-sound", 256, ScriptedSession.failing(CaptureException.Kind.GONE)));

    assertEquals(ExitCode.AUDIO, run.exitCode());
    assertEquals("gone", run.error("code"));
  }

  @Test
  void enterEndsItEarly() {
    ScriptedSession card = session("java-sound", 256, delay(595));
    Run run = new LiveBench(data).typed("\n\n", backend("java-sound", card), args());

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.err().contains("Enter ends it with what was seen so far."), run.err());
    assertTrue(card.takes().size() <= 1, "takes " + card.takes().size());
  }

  @Test
  void holdsTheDelayAgainstTheBudgetAndTheReportedOne() throws IOException {
    Path chain = data.resolve("hall.yaml");
    Files.writeString(
        chain,
        """
        chain: Hall
        sample-rate: 48000
        block-size: 64
        stages:
          host: { samples: 595 }
        paths:
          vocal: { listener: house, stages: [host] }
        """);
    String[] against = {
      "--chain=" + chain, "--path=vocal", "--allow-samples=1", "--reported-samples=595"
    };
    Run within = soak(session("java-sound", 256, delay(595)), against);
    Run late = soak(session("java-sound", 256, delay(659)), against);

    assertEquals(ExitCode.GOOD, within.exitCode(), within.out() + within.err());
    assertEquals("within", verdict(within));
    assertEquals(ExitCode.OUTSIDE, late.exitCode(), late.out() + late.err());
    assertEquals("late", verdict(late));
    assertEquals("outside-budget", late.json().get("outcome"));
    assertEquals("bad", standing(late));
    assertEquals(false, ((Map<?, ?>) late.json().get("hostCheck")).get("agrees"));
  }

  private static Object standing(Run run) {
    return ((Map<?, ?>) run.json().get("verdict")).get("standing");
  }

  private static Object verdict(Run run) {
    return ((Map<?, ?>) run.json().get("comparison")).get("verdict");
  }

  @Test
  void refusesATimeThatIsNone() {
    for (String time : new String[] {"--for=30", "--for=0s", "--for=1d", "--for=-2m"}) {
      Run run = soak(session("java-sound", 256, delay(595)), time);

      assertEquals(ExitCode.USAGE, run.exitCode(), time);
    }
  }

  private static Wires delay(int samples) {
    return wires(2).join(0, 0, CARD + samples, 0.5).join(1, 1, CARD, 1);
  }

  private Run soak(ScriptedSession card, String... more) {
    String[] all =
        Stream.of(args(), new String[] {"--yes", "--json"}, more)
            .flatMap(Stream::of)
            .toArray(String[]::new);
    return new LiveBench(data).run(List.of(backend("java-sound", card)), all);
  }

  private static String[] args() {
    return new String[] {
      "soak",
      "--backend=java-sound",
      "--for=6s",
      "--seconds=0.5",
      "--repeat=1",
      "--max-delay=0.1",
      "--send=2",
      "--return=2",
      "--reference-send=1",
      "--reference-return=1"
    };
  }

  private static Map<?, ?> soak(Run run) {
    return (Map<?, ?>) run.json().get("soak");
  }

  private static double number(Map<?, ?> map, String key) {
    return ((Number) map.get(key)).doubleValue();
  }
}
