package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedServer;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DevicesCommandTest {
  private static final SampleRate CD = new SampleRate(44_100);
  private static final ScriptedBackend NO_SERVER =
      new ScriptedBackend(
          "jack", new Availability.Unusable("no server is running", "start the server"));

  @TempDir Path data;
  private LiveBench bench;

  @BeforeEach
  void open() {
    bench = new LiveBench(data);
  }

  @Test
  void listsDevicesWithACommandToCopyOrSaysWhatIsMissing() {
    Run run = bench.run(List.of(javaSound(card("Stage card", 2, 4)), NO_SERVER), "devices");

    assertEquals(ExitCode.GOOD, run.exitCode());
    assertEquals(
        """
        java-sound
          device      sends  returns  rates in Hz
          Stage card      2        4  44100 48000
          not sample-locked: the card's delay changes at each opening, so patch a reference
          take this one: room for a reference, runs at a rate of its own
          loopgauge measure --backend java-sound --output "Stage card" --input "Stage card" \
        --send 2 --return 2 --reference-send 1 --reference-return 1

        jack can't be used: no server is running
          try          start the server

        simulated
          device  sends  returns  rates in Hz
          rig         2        2  any
          not sample-locked: the card's delay changes at each opening, so patch a reference
          loopgauge measure --backend simulated --chain FILE --path NAME
        """,
        run.out());
  }

  @Test
  void aProbeSaysWhatOpensAndWhyNot() {
    AudioBackend opening =
        new ScriptedBackend(
            "java-sound",
            new Availability.Usable(List.of(card("Stage card", 2, 4), card("Speaker", 2, 0))),
            LiveBench.session("java-sound", 256));
    Run run = bench.run(List.of(opening, NO_SERVER), "devices", "--probe");
    assertTrue(
        run.out().contains("probed       Stage card: opens at 48000 Hz, buffer 256\n"), run.out());
    assertTrue(run.out().contains("Speaker: not tried: it only plays"), run.out());
    Run json = bench.run(List.of(javaSound(card("Stage card", 2, 4))), "devices", "--json");
    assertFalse(json.out().contains("probe"), json.out());
  }

  @Test
  void opensNoDeviceThatOthersMayHoldAloneUnlessAProbeIsAskedFor() {
    AudioDevice stage =
        new AudioDevice("ASIO: Stage", 8, 8, List.of(LiveBench.RATE), RateSource.DEVICE, true);
    AudioDevice speaker = new AudioDevice("WASAPI: Speaker", 2, 0, List.of(LiveBench.RATE));
    Availability seen =
        new Availability.Usable(
            List.of(
                AudioDevice.uncounted("ASIO: Stage", RateSource.DEVICE, true),
                AudioDevice.uncounted("ASIO: Desk", RateSource.DEVICE, true),
                speaker));
    var drivers =
        new ScriptedBackend("drivers", seen, LiveBench.session("drivers", 64)).countable(stage);
    String listed = bench.run(List.of(drivers), "devices").out();
    assertTrue(
        listed.startsWith(
            """
            drivers
              device           sends  returns  rates in Hz  sample-locked
              ASIO: Stage          ?        ?  ?            yes
              ASIO: Desk           ?        ?  ?            yes
              WASAPI: Speaker      2        0  48000        no
              ?: channels not counted: --probe opens it
              sample-locked: the delay is the same at each opening; else patch a reference

            """),
        listed);
    assertEquals(List.of(), drivers.counted());
    assertEquals(List.of(), drivers.requests());

    String probed = bench.run(List.of(drivers), "devices", "--probe").out();
    assertEquals(List.of("ASIO: Stage", "ASIO: Desk"), drivers.counted());
    assertTrue(probed.contains("  ASIO: Stage          8        8  48000        yes\n"), probed);
    assertTrue(probed.contains("ASIO: Desk: scripted: it is busy\n"), probed);
    assertTrue(
        probed.contains(
            "take this one: room for a reference, the same delay at each opening, runs at a rate of"
                + " its own; devices marked ? were not compared\n"),
        probed);
    assertTrue(probed.contains("--output \"ASIO: Stage\" --input \"ASIO: Stage\""), probed);
  }

  @Test
  void leavesOutOfTheDocumentWhatWasNotCounted() {
    Availability seen =
        new Availability.Usable(
            List.of(AudioDevice.uncounted("ASIO: Stage", RateSource.DEVICE, true)));
    Run run = bench.run(List.of(new ScriptedBackend("drivers", seen)), "devices", "--json");
    Map<?, ?> drivers = (Map<?, ?>) ((List<?>) run.json().get("backends")).get(0);
    assertEquals(List.of(Map.of("name", "ASIO: Stage")), drivers.get("devices"));
    assertNull(drivers.get("measureCommand"));
  }

  @Test
  void aScriptGetsTheSame() {
    Run run =
        bench.run(List.of(javaSound(card("Stage card", 2, 4)), NO_SERVER), "devices", "--json");

    List<?> backends = (List<?>) run.json().get("backends");
    Map<?, ?> first = (Map<?, ?>) backends.get(0);
    assertEquals("java-sound", first.get("name"));
    assertEquals(true, first.get("usable"));
    assertEquals(
        List.of(
            Map.of(
                "name", "Stage card", "sends", 2, "returns", 4, "ratesHz", List.of(44100, 48000))),
        first.get("devices"));
    Map<?, ?> second = (Map<?, ?>) backends.get(1);
    assertEquals(false, second.get("usable"));
    assertEquals("no server is running", second.get("reason"));
    assertEquals("start the server", second.get("hint"));
    assertEquals(3, backends.size());
  }

  @Test
  void marksTheBackEndWithAReferenceAndThenTheOneWhoseDelayStays() {
    AudioDevice any = new AudioDevice("Desk", 2, 2, List.of(CD, LiveBench.RATE), RateSource.ANY);
    ScriptedServer server = new ScriptedServer(64);
    String both = bench.run(List.of(javaSound(any), server), "devices").out();
    assertTrue(
        both.contains(
            "take this one: room for a reference, the same delay at each opening, runs at a rate of"
                + " its own"),
        both);
    assertTrue(both.contains("Desk        2        2  any\n"), both);
    assertEquals(2, both.split("take this one", -1).length);
  }

  @Test
  void saysOfEachDeviceHowItCountsWhereTheyDiffer() {
    AudioDevice locked =
        new AudioDevice("JACK: rig", 2, 2, List.of(LiveBench.RATE), RateSource.SERVER, true);
    AudioDevice other = new AudioDevice("ALSA: card", 8, 8, List.of(), RateSource.ANY);
    var drivers = new ScriptedBackend("drivers", new Availability.Usable(List.of(other, locked)));
    Run run = bench.run(List.of(drivers), "devices");
    assertTrue(
        run.out()
            .startsWith(
                """
                drivers
                  device      sends  returns  rates in Hz  sample-locked
                  ALSA: card      8        8  any          no
                  JACK: rig       2        2  48000        yes
                  sample-locked: the delay is the same at each opening; else patch a reference
                """),
        run.out());
    Map<?, ?> first =
        (Map<?, ?>)
            ((List<?>) bench.run(List.of(drivers), "devices", "--json").json().get("backends"))
                .get(0);
    assertFalse(first.containsKey("sampleLocked"));
    assertEquals(true, ((Map<?, ?>) ((List<?>) first.get("devices")).get(1)).get("sampleLocked"));
  }

  @Test
  void prefersDevicesWithRoomForAReference() {
    String command =
        command(card("Headset", 2, 1), card("Speaker", 1, 0), card("Stage \"A\"", 0, 8));

    assertEquals(
        "loopgauge measure --backend java-sound --output \"Headset\" --input \"Stage \\\"A\\\"\""
            + " --send 2 --return 2 --reference-send 1 --reference-return 1",
        command);
  }

  @Test
  void proposesASingleLoopWhereThereIsNoMore() {
    assertEquals(
        "loopgauge measure --backend java-sound --output \"Headset\" --input \"Headset\""
            + " --send 1 --return 1",
        command(card("Headset", 2, 1)));
  }

  @Test
  void proposesNothingWhereNothingCanRecord() {
    Run run = bench.run(List.of(javaSound(card("Speaker", 2, 0))), "devices");

    assertFalse(run.out().contains("--backend java-sound"), run.out());
  }

  private String command(AudioDevice... devices) {
    Run run = bench.run(List.of(javaSound(devices)), "devices", "--json");
    return (String)
        ((Map<?, ?>) ((List<?>) run.json().get("backends")).get(0)).get("measureCommand");
  }

  private static AudioBackend javaSound(AudioDevice... devices) {
    return new ScriptedBackend("java-sound", new Availability.Usable(Arrays.asList(devices)));
  }

  private static AudioDevice card(String name, int sends, int returns) {
    return new AudioDevice(name, sends, returns, List.of(CD, LiveBench.RATE));
  }
}
