package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What the tests of the packaged program on a JACK server share: a rig, and short commands to it.
 *
 * @param folder where the program keeps its data and what it says
 */
record JackBench(Path folder) {
  static final int RATE = 48_000;
  static final DelayLine CABLE = DelayLine.of(0);
  static final String[] RIG = {
    "--backend", "jack", "--output", "rig", "--input", "rig", "--yes", "--json"
  };
  static final String[] REFERENCED = {
    "--send", "2", "--return", "2", "--reference-send", "1", "--reference-return", "1"
  };
  static final String[] SINGLE = {"--send", "1", "--return", "1"};

  /** What makes a measurement or a calibration short. */
  static final String[] QUICK = {"--seconds", "0.5", "--repeat", "2", "--max-delay", "0.2"};

  /** Takes for twelve seconds. */
  static final String[] SOAK = {
    "--for", "12s", "--seconds", "0.5", "--repeat", "1", "--max-delay", "0.1"
  };

  static DelayClient rig(AudioServer server, DelayLine... lines) throws Exception {
    return DelayClient.start(server, "rig", lines);
  }

  /** A busy machine loses sound now and then: does what the hint says and measures again. */
  Run cleanly(AudioServer server, String command, String[] channels) throws Exception {
    Run run = run(server, command, channels, QUICK);
    for (int again = 0; again < 4 && run.out().contains("\"dropout\""); again++) {
      run = run(server, command, channels, QUICK);
    }
    return run;
  }

  Run run(AudioServer server, String command, String[] channels, String... more) throws Exception {
    return Jar.end(start(server, command, channels, more), err());
  }

  /** Where the last command says what goes on. */
  Path err() {
    return folder.resolve("err");
  }

  Process start(AudioServer server, String command, String[] channels, String... more)
      throws Exception {
    Map<String, String> environment = new HashMap<>(server.environment());
    environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    return Jar.start(
        environment,
        err(),
        Stream.of(new String[] {command}, RIG, channels, more)
            .flatMap(Stream::of)
            .toArray(String[]::new));
  }

  static Map<?, ?> measurement(Run run) {
    Map<?, ?> measurement = (Map<?, ?>) run.json().get("measurement");
    assertTrue(measurement != null, run.out() + run.err());
    return measurement;
  }

  static double delaySamples(Run run) {
    return ((Number) measurement(run).get("delaySamples")).doubleValue();
  }

  static Map<?, ?> soak(Run run) {
    return (Map<?, ?>) run.json().get("soak");
  }
}
