package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedServer;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LiveSeriesTest {
  @TempDir Path folder;

  @Test
  void readsTheBuiltInRigAtEachBlockSize() throws IOException {
    Path chain = folder.resolve("hall.yaml");
    Files.writeString(
        chain,
        """
        chain: Hall
        sample-rate: 48000
        block-size: 64
        stages:
          host: { blocks: 2 }
          driver: { samples: 219 }
        paths:
          vocal: { listener: house, stages: [host, driver] }
        """);
    Path written = folder.resolve("fit.yaml");
    Run run =
        new LiveBench(folder)
            .run(
                List.of(),
                "series",
                "--live",
                "--backend=simulated",
                "--chain=" + chain,
                "--path=vocal",
                "--block-sizes=64,256,1024",
                "--seconds=0.2",
                "--repeat=1",
                "--out=" + written,
                "--json");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(2, fit(run).get("roundedBlocks"));
    assertEquals(219, ((Number) fit(run).get("fixedSamples")).doubleValue(), 0.05);
    assertTrue(Files.readString(written).contains("block series, live"), run.out());
  }

  @Test
  void setsTheServerAndSetsItBack() {
    ScriptedServer server = server(128, at(300 + 2 * 64), at(300 + 2 * 256), at(300 + 2 * 1024));
    Run run = live(server, "--yes", "--block-sizes=64,256,1024");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(List.of(64, 256, 1024, 128), server.sizes());
    assertEquals(2, fit(run).get("roundedBlocks"));
    assertTrue(run.err().contains("back to 128 samples at the end"), run.err());
  }

  @Test
  void setsTheServerBackWhenTheSoundFails() {
    ScriptedServer server =
        server(128, ScriptedSession.failing(CaptureException.Kind.GONE), at(300));
    Run run = live(server, "--yes");

    assertEquals(ExitCode.AUDIO, run.exitCode());
    assertEquals(List.of(64, 128), server.sizes());
  }

  @Test
  void asksForEachBlockSizeElsewhere() {
    ScriptedBackend card =
        backend("java-sound", open(at(300 + 128)), open(at(300 + 512)), open(at(300 + 2048)));
    Run run =
        new LiveBench(folder)
            .typed(
                "\n\n\n\n", card, args("java-sound", "--block-sizes=64,256,1024", "--buffer=512"));

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(2, fit(run).get("roundedBlocks"));
    assertTrue(run.err().contains("Set the host to a block of 1024 samples"), run.err());
    assertEquals(
        List.of(512, 512, 512), card.requests().stream().map(r -> r.bufferSamples()).toList());
  }

  @Test
  void aSpoiledReadingStandsOutAndBendsNothing() {
    ScriptedServer server = server(64, at(364), at(428), at(556 + 90), at(812), at(1324));
    Run run = live(server, "--yes");

    assertEquals(1, fit(run).get("roundedBlocks"), run.out());
    assertEquals(300, ((Number) fit(run).get("fixedSamples")).doubleValue(), 0.05);
    List<?> odd =
        ((List<?>) run.json().get("readings"))
            .stream().filter(reading -> ((Map<?, ?>) reading).get("outlier").equals(true)).toList();
    assertEquals(1, odd.size(), run.out());
    assertEquals(256, ((Map<?, ?>) odd.get(0)).get("blockSize"));
  }

  @Test
  void lostSoundIsCountedAndTriedAgain() {
    ScriptedSession lossy =
        open(
            wires(2)
                .join(0, 0, CARD + 364, 0.5)
                .join(1, 1, CARD, 1)
                .but(Incident.Kind.DROPOUT, "The card lost time once."),
            at(364));
    ScriptedServer server = new ScriptedServer(64, lossy, open(at(428)), open(at(556)));
    Run run = live(server, "--yes", "--block-sizes=64,128,256");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    Map<?, ?> first = (Map<?, ?>) ((List<?>) run.json().get("readings")).get(0);
    assertEquals(1, first.get("dropouts"));
    assertEquals(128, ((Map<?, ?>) run.json().get("smallestClean")).get("blockSize"));
  }

  @Test
  void oneReadingIsNoSeries() {
    ScriptedServer server = server(64, at(364), wires(2).join(1, 1, CARD, 1));
    Run run = live(server, "--yes", "--block-sizes=64,128");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out() + run.err());
    assertEquals("too-few-readings", run.error("code"));
    assertTrue(run.error("text").toString().contains("at a block of 128"), run.out());
  }

  @Test
  void refusesWhatATableCantUse() throws IOException {
    Path table = Files.writeString(folder.resolve("rig.csv"), "block-size,delay-ms\n64,7.2\n");

    Run.of("series", table.toString(), "--sample-rate=48000", "--send=2")
        .assertRefused("--send is for a live series");
    Run.of("series", table.toString(), "--live").assertRefused("found both");
    Run.of("series").assertRefused("found neither");
    Run.of("series", "--live", "--block-sizes=64").assertRefused("two block sizes or more");
  }

  private static ScriptedSession.Answer at(int samples) {
    return wires(2).join(0, 0, CARD + samples, 0.5).join(1, 1, CARD, 1);
  }

  private static ScriptedSession open(ScriptedSession.Answer... answers) {
    return session("jack", 256, answers);
  }

  private static ScriptedServer server(int blockSize, ScriptedSession.Answer... answers) {
    return new ScriptedServer(
        blockSize, Stream.of(answers).map(LiveSeriesTest::open).toArray(ScriptedSession[]::new));
  }

  private Run live(ScriptedServer server, String... more) {
    return new LiveBench(folder).run(List.of(server), args("jack", more));
  }

  private static String[] args(String backend, String... more) {
    String[] args = {
      "series",
      "--live",
      "--backend=" + backend,
      "--seconds=0.3",
      "--repeat=1",
      "--max-delay=0.1",
      "--send=2",
      "--return=2",
      "--reference-send=1",
      "--reference-return=1",
      "--json"
    };
    return Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new);
  }

  private static Map<?, ?> fit(Run run) {
    return (Map<?, ?>) run.json().get("fit");
  }
}
