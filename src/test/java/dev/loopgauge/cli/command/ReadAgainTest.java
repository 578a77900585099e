package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.cli.Recorded;
import dev.loopgauge.cli.Run;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.kind.Documents;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a command prints as JSON is read as the record it was written from, with the same text. */
@Tag("campaign")
class ReadAgainTest {
  private static final String CHAIN =
      """
      chain: Harbour Theatre
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 12, tolerance-samples: 1 }
        host: { blocks: 2 }
        limiter: { samples: 240, reported-by: host, compensated: unknown }
        throw: { metres: 5 }
        camera: { frames: 2 }
      paths:
        house: { listener: house, stages: [box, host, limiter, throw], direct-metres: 3 }
        ears: { listener: in-ear, stages: [box, host, limiter], instrument: voice }
        stream: { listener: stream, stages: [box, host], picture: screen, returns-to-talker: yes }
      pictures: { screen: { frame-rate: 25, stages: [camera] } }
      mixes: { front: [house, ears] }
      """;

  @TempDir Path folder;
  private String chain = "";

  @BeforeEach
  void writeTheChainFile() throws IOException {
    chain = Files.writeString(folder.resolve("hall.yaml"), CHAIN).toString();
  }

  private static Document read(String json) throws IOException {
    return Documents.read(Json.read(json)).orElseThrow();
  }

  /** The document that a command prints as JSON. */
  private static Document assertReadAgain(String... args) throws IOException {
    List<String> asked = new ArrayList<>(List.of(args));
    asked.add("--json");
    Run run = Run.of(asked.toArray(String[]::new));
    Document document = read(run.out());
    assertEquals(run.out().strip(), Json.write(document).strip());
    assertEquals(document, read(Json.write(document)));
    return document;
  }

  private static void assertSame(String... args) throws IOException {
    Run run = Run.of(args);
    assertEquals(run.out().isEmpty() ? run.err() : run.out(), assertReadAgain(args).text());
  }

  @Test
  void budgetsPlansAndAlignments() throws IOException {
    assertSame("budget", chain);
    assertSame("budget", chain, "--change=block-size=256", "--change=twice=limiter");
    assertReadAgain("budget", chain, "--path=ears");
    assertSame("plan", chain);
    assertSame("plan", chain, "--may-leave-host=ears", "--may-leave-host=house");
    assertSame("align", chain);
    assertSame("budget", "none.yaml");
  }

  @Test
  void series() throws IOException {
    Path readings =
        Files.writeString(
            folder.resolve("host.csv"),
            """
            block-size,delay-ms,cpu-percent,dropouts
            32,5.896,71,2
            64,7.229,40,0
            128,9.896,22,0
            256,19.25,12,0
            512,25.896,7,0
            """);
    assertSame("series", readings.toString(), "--sample-rate=48000");
    assertSame("series", readings.toString(), "--chain=" + chain, "--path=ears");
  }

  private String[] live(String command, String path, String... more) {
    List<String> args =
        new ArrayList<>(List.of(command, "--backend=simulated", "--yes", "--seconds=0.3"));
    args.addAll(List.of("--send=2", "--return=2", "--reference-send=1", "--reference-return=1"));
    args.addAll(List.of("--chain=" + chain, "--path=" + path));
    args.addAll(List.of(more));
    return args.toArray(String[]::new);
  }

  @Test
  void measurements() throws IOException {
    assertSame(live("measure", "ears"));
    assertSame(live("measure", "ears", "--fault=block-size=128", "--reported-samples=240"));
    assertSame(live("measure", "ears", "--fault=noise=-3", "--repeat=1"));
    assertSame(live("soak", "ears", "--for=3s"));
    assertSame("patch", chain, "--path=ears", "--backend=simulated", "--yes");
  }

  /** Noise of two seconds, as another channel hears it this many samples later. */
  private Path recording(String name, int... delays) throws Exception {
    double[][] channels = new double[delays.length][];
    for (int i = 0; i < delays.length; i++) {
      SplittableRandom random = new SplittableRandom(delays[i] < 0 ? 7 : 6);
      channels[i] = new double[96_000];
      for (int at = Math.max(0, delays[i]); at < channels[i].length; at++) {
        channels[i][at] = random.nextDouble() - 0.5;
      }
    }
    return Recorded.write(
        folder.resolve(name),
        Arrays.stream(channels)
            .map(samples -> Signal.of(new SampleRate(48_000), samples))
            .toArray(Signal[]::new));
  }

  @Test
  void recordings() throws Exception {
    String all = recording("all.wav", 0, 480, 542, -1).toString();
    assertSame("analyze", "--reference", all, "--return-channel=2");
    assertSame("analyze", "--reference", all, "--return-channel=4");
    assertSame("analyze", "--reference", all, "--return-channel=2,3,4");
    assertSame("pairs", all);
    assertSame("follow", "--reference", all, "--return-channel=2", "--window=0.5");
    assertSame("follow", "--reference", all, "--return-channel=4", "--window=0.5");
  }
}
