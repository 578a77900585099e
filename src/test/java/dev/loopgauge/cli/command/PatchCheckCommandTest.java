package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The scripted card has two sends and four returns. */
class PatchCheckCommandTest {
  private static final String[] CHECK = {"patch", "--backend", "jack", "--max-delay", "0.1"};

  @TempDir Path data;
  private LiveBench bench;

  @BeforeEach
  void open() {
    bench = new LiveBench(data);
  }

  @Test
  void ticksAllSendsWhileAllReturnsListen() {
    ScriptedBackend card = card(wires(4).join(0, 0, CARD, 1).join(1, 3, CARD + 480, 0.5));
    Run run = bench.typed("\n", card, CHECK);

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(List.of(1, 2), card.requests().get(0).sends());
    assertEquals(List.of(1, 2, 3, 4), card.requests().get(0).returns());
    assertEquals(
        """
        HEARD: each send comes back.
          send 1       return 1, 0.0 dB, 16.19 ms late
          send 2       return 4, -6.0 dB, 26.19 ms late
          silent       return 2, 3
          note         the times include the sound card's own delay
        """,
        run.out());
    assertEquals(
        """
        Sends 1, 2 of "Stage card" play in turn a short tick at -30 dBFS.
        Mute the loudspeakers, take in-ears out.
        Enter to play, Ctrl-C to stop.
        """,
        run.err());
  }

  @Test
  void saysWhichReturnHearsItInstead() {
    ScriptedBackend card = card(wires(4).join(0, 0, CARD, 1).join(1, 3, CARD + 480, 0.5));
    Run run =
        bench.typed(
            "\n",
            card,
            args(
                "--send",
                "2",
                "--return",
                "2",
                "--reference-send",
                "1",
                "--reference-return",
                "1"));

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(
        run.out().startsWith("NOT PATCHED as asked: return 2 doesn't hear send 2.\n"), run.out());
    assertTrue(run.out().contains("send 2 is on return 4"), run.out());
  }

  @Test
  void aSendThatNobodyHearsIsNamed() {
    Run run = bench.typed("\n", card(wires(4).join(0, 0, CARD, 1)), CHECK);

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(run.out().startsWith("NOT HEARD: send 2.\n"), run.out());
  }

  @Test
  void aReturnPatchedTwiceIsNamedAndEndsWithThree() {
    Run run =
        bench.typed("\n", card(wires(4).join(0, 1, CARD, 1).join(1, 1, CARD + 480, 1)), CHECK);

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(
        run.out().startsWith("NOT PATCHED: return 2 hears more than one send: 1, 2."), run.out());
  }

  @Test
  void asksBeforeTheFirstTick() {
    ScriptedBackend card = card(wires(4));

    assertEquals(ExitCode.USAGE, bench.run(List.of(card), CHECK).exitCode());
    assertEquals(List.of(), card.requests());
  }

  /** To count the channels it has to be opened, and other programs may lose it by that. */
  @Test
  void asksBeforeItOpensADeviceToCountItsChannels() {
    ScriptedBackend card = uncounted(wires(4).join(0, 0, CARD, 1).join(1, 3, CARD + 480, 0.5));
    assertEquals(ExitCode.USAGE, bench.run(List.of(card), CHECK).exitCode());
    assertEquals(List.of(), card.counted());

    Run run = bench.typed("\n", card, CHECK);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(List.of("Stage card"), card.counted());
    assertEquals(List.of(1, 2), card.requests().get(0).sends());
    assertEquals(List.of(1, 2, 3, 4), card.requests().get(0).returns());
    assertEquals(
        """
        The first sends of "Stage card", 8 at most, play in turn a short tick at -30 dBFS. Its \
        driver takes the device for itself: other programs may fall silent.
        Mute the loudspeakers, take in-ears out.
        Enter to play, Ctrl-C to stop.
        """,
        run.err());
  }

  private static ScriptedBackend uncounted(Wires wires) {
    AudioDevice listed = AudioDevice.uncounted("Stage card", RateSource.DEVICE, true);
    return new ScriptedBackend(
            "jack", new Availability.Usable(List.of(listed)), session("jack", 256, wires))
        .countable(LiveBench.DEVICES.get(0))
        .taking("Stage card");
  }

  private static ScriptedBackend card(Wires wires) {
    return backend("jack", session("jack", 256, wires));
  }

  private static String[] args(String... more) {
    return Stream.of(CHECK, more).flatMap(Stream::of).toArray(String[]::new);
  }
}
