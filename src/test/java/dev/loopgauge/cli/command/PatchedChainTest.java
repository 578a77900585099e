package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Live commands take sends, returns and the reference from the chain file. */
@Tag("campaign")
class PatchedChainTest {
  /** 30, 158 and 94 samples, on channels of their own; the wedge has no patch. */
  private static final String CHAIN =
      """
      chain: Brook Hall
      sample-rate: 48000
      block-size: 64
      reference: { send: 7, return: 8 }
      stages:
        desk: { samples: 30 }
        blocks: { blocks: 2 }
        box: { samples: 64 }
      paths:
        ears: { listener: in-ear, stages: [desk], patch: { send: 2, return: 3 } }
        house: { listener: house, stages: [desk, blocks], patch: { send: 2, return: 4 } }
        stream: { listener: stream, stages: [desk, box], patch: { send: 5, return: 5 } }
        wedge: { listener: wedge, stages: [box] }
      """;

  @TempDir Path folder;
  private LiveBench bench;

  @BeforeEach
  void open() throws IOException {
    bench = new LiveBench(folder.resolve("data"));
    Files.writeString(folder.resolve("brook.yaml"), CHAIN);
  }

  @Test
  void eachPathIsMeasuredWhereItsPatchSays() {
    assertEquals(30, delay(measure("ears")), 0.05);
    assertEquals(158, delay(measure("house")), 0.05);
    assertEquals(94, delay(measure("stream")), 0.05);
    assertEquals("referenced", measurement(measure("stream")).get("method"));
  }

  @Test
  void otherChannelsThanItsPatchAreNamed() {
    assertEquals(
        List.of(
            "the chain file has 'ears' on send 2 and return 3, not on 2 and 4, where it has"
                + " 'house'"),
        notes(measure("ears", "--send", "2", "--return", "4")));
    assertEquals(null, notes(measure("ears", "--send", "2", "--return", "3")));
  }

  @Test
  void aPathWithoutAPatchIsWhereTheCommandNamesIt() {
    assertEquals(64, delay(measure("wedge")), 0.05);
    assertEquals(64, delay(measure("wedge", "--send", "9", "--return", "9")), 0.05);
  }

  @Test
  void optionsGoOverTheChainFile() {
    assertEquals(94, delay(measure("ears", "--send", "5", "--return", "5")), 0.05);
  }

  @Test
  void aProfileGoesOverTheChainFile() {
    bench.run(
        List.of(), "profile save truck --backend simulated --send 5 --return 5".split(" ", -1));
    assertEquals(94, delay(measure("ears", "--profile", "truck")), 0.05);
  }

  @Test
  void aFaultOfAnotherPathIsNotHeard() {
    assertEquals(30, delay(measure("ears", "--fault", "house:silent")), 0.05);
    assertEquals(ExitCode.NOT_TRUSTWORTHY, measure("house", "--fault", "silent").exitCode());
  }

  @Test
  void swappedReturnsAreHeardOnTheOtherPath() {
    assertEquals(158, delay(measure("ears", "--fault", "swapped=house")), 0.05);
  }

  @Test
  void anUnknownPathOfAFaultIsRefusedWithTheNearestName() {
    Run run = measure("ears", "--fault", "hause:inverted");

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.json().toString().contains("'house' is the nearest known name"), run.out());
  }

  /** The chain file names no reference, and the default one, return 1, is taken. */
  @Test
  void anotherPathIsNeverTakenForTheReference() throws IOException {
    Files.writeString(
        folder.resolve("brook.yaml"),
        CHAIN
            .replace("reference: { send: 7, return: 8 }\n", "")
            .replace("send: 2, return: 3", "send: 1, return: 1"));
    assertEquals("uncalibrated", measurement(measure("wedge")).get("method"));
  }

  private Run measure(String path, String... more) {
    String[] rig = {
      "measure",
      "--backend",
      "simulated",
      "--chain",
      folder.resolve("brook.yaml").toString(),
      "--path",
      path,
      "--json"
    };
    return bench.run(List.of(), Stream.of(rig, more).flatMap(Stream::of).toArray(String[]::new));
  }

  private static Map<?, ?> measurement(Run run) {
    return (Map<?, ?>) run.json().get("measurement");
  }

  private static Object notes(Run run) {
    return run.json().get("notes");
  }

  private static double delay(Run run) {
    assertTrue(run.json().get("measurement") != null, run.out());
    return ((Number) measurement(run).get("delaySamples")).doubleValue();
  }
}
