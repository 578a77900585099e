package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrateCommandTest {
  private static final String[] LOOP = {
    "--send", "2", "--return", "2", "--seconds", "0.2", "--max-delay", "0.1", "--repeat", "1"
  };

  @TempDir Path data;
  private LiveBench bench;

  @BeforeEach
  void open() {
    bench = new LiveBench(data);
  }

  @Test
  void whatIsKeptTakesTheCardOutOfLaterMeasurements() {
    Run kept = calibrate("jack", 256);
    assertEquals(ExitCode.GOOD, kept.exitCode(), kept.err());
    assertTrue(kept.out().startsWith("CALIBRATED"), kept.out());

    Map<?, ?> measurement = (Map<?, ?>) measure(256).json().get("measurement");
    assertEquals("sample-locked", measurement.get("method"));
    assertEquals(595, ((Number) measurement.get("delaySamples")).doubleValue(), 0.01);
  }

  @Test
  void atAnotherBlockSizeItIsRefusedWithTheReason() {
    calibrate("jack", 256);
    Run run = measure(128);

    Map<?, ?> measurement = (Map<?, ?>) run.json().get("measurement");
    assertEquals("uncalibrated", measurement.get("method"));
    Map<?, ?> finding = (Map<?, ?>) ((List<?>) run.json().get("findings")).get(0);
    assertEquals("uncalibrated", finding.get("code"));
    assertTrue(
        finding.get("text").toString().endsWith("made at a block of 256 samples, not 128"),
        finding.toString());
  }

  @Test
  void aBackendThatShiftsIsRefusedBeforeAnythingIsPlayed() {
    ScriptedSession opened = session("java-sound", 256, wires(1).join(0, 0, CARD, 1));
    Run run = bench.typed("\n", backend("java-sound", opened), args("calibrate", "java-sound"));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("`measure --calibrate`"), run.err());
    assertEquals(List.of(), opened.takes());
    assertTrue(opened.closed());
  }

  @Test
  void withoutACableNothingIsKept() {
    Run run = calibrate(session("jack", 256), session("jack", 256, wires(1)));

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertFalse(Files.exists(data.resolve("calibrations")));
  }

  @Test
  void besideAReferenceTheSkewIsTakenOutOnABackendThatShiftsToo() {
    Run kept = skew(CARD + 2, "calibrate", "--json");
    assertEquals(ExitCode.GOOD, kept.exitCode(), kept.err());
    Map<?, ?> calibration = (Map<?, ?>) kept.json().get("calibration");
    assertEquals(2, ((Number) calibration.get("delaySamples")).doubleValue(), 0.01);
    assertEquals(
        List.of(2, 2, 1, 1),
        Stream.of("send", "return", "referenceSend", "referenceReturn")
            .map(key -> ((Number) calibration.get(key)).intValue())
            .toList());

    Run run = skew(CARD + 2 + 595, "measure", "--json");
    Map<?, ?> measurement = (Map<?, ?>) run.json().get("measurement");
    assertEquals("referenced", measurement.get("method"));
    assertEquals(595, ((Number) measurement.get("delaySamples")).doubleValue(), 0.01);
    assertTrue(run.json().get("notes").toString().contains("is taken off: +2.00"), run.out());
  }

  @Test
  void aSkewBeyondASampleIsKeptWithAQuestion() {
    String like = skew(CARD, "calibrate").out();
    assertTrue(like.startsWith("CALIBRATED: the skew of two pairs of channels"), like);
    assertFalse(like.contains("is the path still patched?"), like);

    String unlike = skew(CARD + 2, "calibrate").out().replaceAll("\\s+", " ");
    assertTrue(unlike.contains("note more than 1 sample: right if one pair"), unlike);
    assertTrue(unlike.contains("is the path still patched?"), unlike);
  }

  @Test
  void aPathStillPatchedIsRefusedAndNothingKept() {
    Run run = skew(CARD + 595, "calibrate", "--json");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    Map<?, ?> finding = (Map<?, ?>) ((List<?>) run.json().get("findings")).get(0);
    assertEquals("beyond-window", finding.get("code"));
    assertEquals(
        "is the path still patched? join send 2 straight to return 2 with a cable",
        finding.get("hint"));
    assertFalse(Files.exists(data.resolve("calibrations")));
  }

  /** On a card that is later by another amount at each opening. */
  private Run skew(int delay, String command, String... more) {
    ScriptedSession[] openings =
        IntStream.range(0, 4)
            .map(opening -> 100 * opening)
            .mapToObj(
                later ->
                    session(
                        "java-sound",
                        256,
                        wires(2).join(0, 0, delay + later, 1).join(1, 1, CARD + later, 1)))
            .toArray(ScriptedSession[]::new);
    String[] reference = {"--reference-send", "1", "--reference-return", "1"};
    return bench.typed(
        "\n",
        backend("java-sound", openings),
        args(
            command,
            "java-sound",
            Stream.of(reference, more).flatMap(Stream::of).toArray(String[]::new)));
  }

  @Test
  void withoutATerminalItNeedsYes() {
    ScriptedBackend card = backend("jack");
    Run run = bench.run(List.of(card), args("calibrate", "jack"));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals(List.of(), card.requests());
  }

  @Test
  void aProfileCarriesItsCalibrationToAnotherLaptop(@TempDir Path laptop) throws IOException {
    String[] save = {"profile", "save", "foh", "--backend", "jack"};
    bench.run(List.of(), Stream.of(save, LOOP).flatMap(Stream::of).toArray(String[]::new));
    Run kept =
        bench.typed("\n", backend("jack", cables(256)), "calibrate", "--profile", "foh", "--json");
    assertEquals(2, ((List<?>) kept.json().get("files")).size(), kept.out());

    Files.createDirectories(laptop.resolve("profiles"));
    Files.copy(data.resolve("profiles/foh.yaml"), laptop.resolve("profiles/foh.yaml"));
    bench = new LiveBench(laptop);
    Run run =
        bench.typed(
            "\n", backend("jack", rig(256)), "measure", "--profile", "foh", "--yes", "--json");
    assertEquals("sample-locked", ((Map<?, ?>) run.json().get("measurement")).get("method"));
  }

  @Test
  void aProfileWhoseDeviceIsMissingSaysWhatIsThere() {
    String[] save = {"profile", "save", "foh", "--backend", "jack", "--output", "Old card"};
    bench.run(List.of(), Stream.of(save, LOOP).flatMap(Stream::of).toArray(String[]::new));
    Run run = bench.typed("\n", backend("jack"), "measure", "--profile", "foh", "--yes", "--json");

    assertEquals(ExitCode.AUDIO, run.exitCode());
    assertEquals("no-such-device", run.error("code"));
    assertEquals("profile 'foh': scripted: no such device", run.error("text"));
    assertEquals("try another What is there: jack: Stage card.", run.error("hint"));
  }

  private Run calibrate(String backend, int block) {
    assertEquals("jack", backend);
    return calibrate(cables(block));
  }

  private Run calibrate(ScriptedSession... sessions) {
    return bench.typed("\n", backend("jack", sessions), args("calibrate", "jack"));
  }

  private Run measure(int block) {
    return bench.typed("\n", backend("jack", rig(block)), args("measure", "jack", "--json"));
  }

  /** One opening to look at, and three to measure. */
  private static ScriptedSession[] cables(int block) {
    return Stream.generate(() -> session("jack", block, wires(1).join(0, 0, CARD, 1)))
        .limit(4)
        .toArray(ScriptedSession[]::new);
  }

  private static ScriptedSession rig(int block) {
    return session("jack", block, wires(1).join(0, 0, CARD + 595, 1));
  }

  private static String[] args(String command, String backend, String... more) {
    return Stream.of(new String[] {command, "--backend", backend}, LOOP, more)
        .flatMap(Stream::of)
        .toArray(String[]::new);
  }
}
