package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.javasound.AlsaRig;
import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.outside.Tool;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Installs Debian's package on this machine, runs each command of README by it, and removes it.
 * Needs root.
 */
@NeedsAudioServer
@NeedsTool({"dpkg", "dpkg-deb", "fakeroot"})
@Timeout(900)
class InstalledProgramIT extends ReadmeIT {
  private static final Path PROGRAM = Path.of("/usr/bin/loopgauge");
  private static final Path HOME = Path.of("/opt/loopgauge");

  @BeforeAll
  static void install() throws Exception {
    assertFalse(Files.exists(HOME), "there is one already; this test would remove it");
    try (Stream<Path> made = Files.list(Path.of(System.getProperty("loopgauge.dist")))) {
      Path deb = made.filter(file -> file.toString().endsWith(".deb")).findFirst().orElseThrow();
      said("dpkg", "-i", deb.toString());
    }
    System.setProperty(Jar.INSTALLED, PROGRAM.toString());
  }

  @AfterAll
  static void remove() throws Exception {
    System.clearProperty(Jar.INSTALLED);
    said("dpkg", "-r", "loopgauge");
    assertFalse(Files.exists(HOME), "left behind");
    assertFalse(Files.exists(PROGRAM, LinkOption.NOFOLLOW_LINKS), "left behind");
  }

  private static String said(String... command) throws Exception {
    return new String(Tool.run(command), StandardCharsets.UTF_8);
  }

  /** README runs all commands but the two that it only mentions, which are run below. */
  @Test
  void readmeRunsAllCommandsButTwo() throws Exception {
    Set<String> left = new TreeSet<>(Commands.names());
    for (String command : commands()) {
      String arguments = command.replaceFirst(".*loopgauge([.]jar)? ", "");
      left.remove(arguments.replaceFirst(" .*", ""));
    }
    assertEquals(Set.of("calibrate", "screen"), left);
  }

  /**
   * JNA unpacks its library and loads the server's. A busy machine may lose sound now and then, and
   * its server refuse a client that it had no time for.
   */
  @Test
  void calibratesThroughAJackServer() throws Exception {
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.STRETCH, 1024, DelayLine.of(777))) {
      Map<String, String> environment = new HashMap<>(rig.server().environment());
      environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
      String command =
          "calibrate --backend jack --output rig --input rig --send 1 --return 1 --yes";
      Run run = run(environment, command);
      for (int again = 0; again < 4 && isBusy(run); again++) {
        run = run(environment, command);
      }
      assertEquals(0, run.exitCode(), run.out() + run.err());
    }
  }

  private static boolean isBusy(Run run) {
    return (run.out() + run.err()).matches("(?s).*(lost time|refused a new client).*");
  }

  @Test
  void servesTheScreenUntilItIsStopped() throws Exception {
    Path chain = folder.resolve("screen.yaml");
    Files.copy(Jar.class.getResourceAsStream("/dev/loopgauge/demo/lantern-theatre.yaml"), chain);
    Path err = folder.resolve("screen-err");
    Process screen =
        Jar.start(
            Map.of("LOOPGAUGE_DATA", folder.resolve("data").toString()),
            err,
            ("screen " + chain + " --backend simulated --port 0").split(" ", -1));
    while (!Files.readString(err).contains("Ctrl-C ends it.")) {
      assertTrue(screen.isAlive(), Files.readString(err));
      TimeUnit.MILLISECONDS.sleep(20);
    }
    screen.destroy();
    assertEquals(0, screen.waitFor(), Files.readString(err));
  }

  private Run run(Map<String, String> environment, String command) throws Exception {
    Path err = folder.resolve("err");
    return Jar.end(Jar.start(environment, err, command.split(" ", -1)), err);
  }

  @Test
  void installingMadeTheArchiveOfClassesAndTheJavaInsideTakesIt() throws Exception {
    Path lib = HOME.resolve("lib/app");
    String loaded =
        said(
            HOME.resolve("lib/runtime/bin/java").toString(),
            "-XX:+UseSerialGC",
            "-Xshare:on",
            "-XX:SharedArchiveFile=" + lib.resolve("loopgauge.jsa"),
            "-Xlog:class+load",
            "-cp",
            lib.resolve("loopgauge.jar").toString(),
            "dev.loopgauge.cli.Main",
            "help");
    assertTrue(loaded.contains("picocli.CommandLine source: shared objects file"), "not picocli");
    List<String> parsed =
        loaded
            .lines()
            .filter(line -> line.matches(".* dev[.]loopgauge.* source: file:.*"))
            .toList();
    assertEquals(List.of(), parsed);
  }

  @Test
  void carriesTheLicences() throws Exception {
    Path lib = HOME.resolve("lib/app");
    assertEquals(Files.readString(Path.of("LICENSE")), Files.readString(lib.resolve("LICENSE")));
    assertTrue(Files.exists(lib.resolve("THIRD-PARTY.txt")));
    assertTrue(Files.isDirectory(HOME.resolve("lib/runtime/legal/java.base")));
  }

  /** The jar's own list knows nothing of the Java beside it, nor of what that holds. */
  @Test
  void listsTheJavaInsideAndWhatThatHolds() throws Exception {
    Map<String, Object> sbom =
        JSON.std.mapFrom(Files.readString(HOME.resolve("lib/app/loopgauge.cdx.json")));
    Map<String, Map<?, ?>> components = byName(sbom);
    assertTrue(components.containsKey("TarsosDSP"), components::toString);
    Map<?, ?> java = components.get("OpenJDK");
    String runs = said(HOME.resolve("lib/runtime/bin/java").toString(), "--version");
    assertTrue(runs.contains("build " + java.get("version")), runs + java.get("version"));
    assertEquals(
        "[{expression=GPL-2.0-only WITH Classpath-exception-2.0}]",
        java.get("licenses").toString());
    Map<String, Map<?, ?>> inside = byName(java);
    assertTrue(inside.size() > 5, inside::toString);
    for (Map<?, ?> component : inside.values()) {
      Map<?, ?> licence = (Map<?, ?>) ((List<?>) component.get("licenses")).get(0);
      String where = ((Map<?, ?>) licence.get("license")).get("name").toString();
      assertTrue(
          Files.exists(HOME.resolve("lib/runtime").resolve(where.replaceFirst("see ", ""))), where);
    }
  }

  private static Map<String, Map<?, ?>> byName(Map<?, ?> of) {
    Map<String, Map<?, ?>> byName = new HashMap<>();
    for (Object component : (List<?>) of.get("components")) {
      byName.put(((Map<?, ?>) component).get("name").toString(), (Map<?, ?>) component);
    }
    return byName;
  }

  /** Nobody is named as the maintainer who isn't. */
  @Test
  void namesNoMaintainerUnlessToldTo() throws Exception {
    String control = said("dpkg-query", "-W", "-f", "${Maintainer}", "loopgauge");
    assertTrue(control.contains("nobody@loopgauge.invalid"), control);
  }
}
