package dev.loopgauge.cli.command;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * What the tests of live commands share: a scripted card, a data folder, somebody at a terminal.
 */
final class LiveBench {
  static final SampleRate RATE = new SampleRate(48_000);
  static final int CARD = 777;
  static final List<AudioDevice> DEVICES =
      List.of(new AudioDevice("Stage card", 2, 4, List.of(RATE)));

  private static final long SEED = 20_260_504;

  private final Map<String, String> environment;

  LiveBench(Path data) {
    this.environment = Map.of("LOOPGAUGE_DATA", data.toString());
  }

  /** Runs a command with these back ends, without a terminal. */
  Run run(List<AudioBackend> backends, String... args) {
    return Run.on(false, "", environment, Adapters.of(() -> backends), args);
  }

  /** Runs a command with somebody at a terminal who types. */
  Run typed(String typed, AudioBackend backend, String... args) {
    return Run.on(true, typed, environment, Adapters.of(() -> List.of(backend)), args);
  }

  /** A back end of the one card. */
  static ScriptedBackend backend(String name, AudioSession... sessions) {
    return new ScriptedBackend(name, new Availability.Usable(DEVICES), sessions);
  }

  /** An opening of the card. */
  static ScriptedSession session(String backend, int block, ScriptedSession.Answer... answers) {
    boolean locked = backend.equals("jack");
    return new ScriptedSession(
        new SessionInfo(backend, "Stage card", "Stage card", RATE, block, locked), answers);
  }

  /** Wires by the places of sends and returns in the session. */
  static Wires wires(int returns) {
    return new Wires(RATE, returns, SEED);
  }
}
