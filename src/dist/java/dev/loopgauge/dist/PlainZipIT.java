package dev.loopgauge.dist;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.outside.Tool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The zip as people use it: unpacked somewhere, under the Java of the system. */
@NeedsTool("unzip")
@Timeout(600)
class PlainZipIT {
  private static final Path DIST = Path.of(System.getProperty("loopgauge.dist"));
  private static final String VERSION = System.getProperty("loopgauge.version");
  private static final String ZIP = "loopgauge-" + VERSION + ".zip";

  @TempDir private Path folder;
  private Path home = Path.of("");

  private record Ended(int code, String out, String err) {}

  @BeforeEach
  void unpack() throws Exception {
    Path place = Files.createDirectory(folder.resolve("place"));
    Tool.run("unzip", "-q", DIST.resolve(ZIP).toString(), "-d", place.toString());
    home = place.resolve("loopgauge-" + VERSION);
  }

  private Ended run(Path program, String... args) throws Exception {
    Path err = folder.resolve("err");
    List<String> command = new ArrayList<>(List.of(program.toString()));
    command.addAll(List.of(args));
    ProcessBuilder builder =
        new ProcessBuilder(command).directory(folder.toFile()).redirectError(err.toFile());
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    Process process = builder.start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), UTF_8);
    return new Ended(process.waitFor(), out, Files.readString(err));
  }

  private void assertTellsVersion(Path program) throws Exception {
    assertEquals(new Ended(0, "loopgauge " + VERSION + "\n", ""), run(program, "--version"));
  }

  private Path archive() {
    return home.resolve("lib/loopgauge.jsa");
  }

  /** The first start makes the archive behind its back; that is waited for, by the time limit. */
  private void awaitArchive() throws InterruptedException {
    while (!Files.exists(archive())) {
      Thread.onSpinWait();
      Thread.sleep(50);
    }
  }

  @Test
  void startsFromAnywhereAndFasterFromTheSecondTimeOn() throws Exception {
    assertFalse(Files.exists(archive()));
    assertTellsVersion(home.resolve("bin/loopgauge"));
    awaitArchive();
    assertTellsVersion(home.resolve("bin/loopgauge"));
    assertTellsVersion(
        Files.createSymbolicLink(folder.resolve("lg"), home.resolve("bin/loopgauge")));
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String loaded =
        new String(
            Tool.run(
                java,
                "-XX:+UseSerialGC",
                "-XX:SharedArchiveFile=" + archive(),
                "-Xlog:class+load",
                "-cp",
                home.resolve("lib/loopgauge.jar").toString(),
                "dev.loopgauge.cli.Main",
                "help"),
            UTF_8);
    assertTrue(
        loaded.contains("picocli.CommandLine source: shared objects file"), "picocli was parsed");
  }

  /** The archive holds for one place only. */
  @Test
  void startsWithoutAWordWhereItWasMovedTo() throws Exception {
    assertTellsVersion(home.resolve("bin/loopgauge"));
    awaitArchive();
    home = Files.move(home, folder.resolve("moved here"));
    assertTellsVersion(home.resolve("bin/loopgauge"));
    Files.writeString(archive(), "damaged");
    assertTellsVersion(home.resolve("bin/loopgauge"));
  }

  @Test
  void handsOnArgumentsAndExitCodes() throws Exception {
    Ended ended = run(home.resolve("bin/loopgauge"), "check", "no such file.yaml");
    assertEquals(2, ended.code());
    assertTrue(ended.err().contains("no such file.yaml"), ended.err());
    assertEquals(0, run(home.resolve("bin/loopgauge"), "demo", "--folder", "new demo").code());
    assertTrue(Files.exists(folder.resolve("new demo/block-128.wav")));
  }

  @Test
  void saysThatJavaIsMissing() throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(home.resolve("bin/loopgauge").toString(), "--version");
    builder.environment().put("JAVA_HOME", folder.toString());
    Process process = builder.redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertEquals(127, process.waitFor());
    assertTrue(said.contains("install Java 17"), said);
  }

  @Test
  void carriesTheLicences() throws Exception {
    assertEquals(Files.readString(Path.of("LICENSE")), Files.readString(home.resolve("LICENSE")));
    assertTrue(Files.readString(home.resolve("THIRD-PARTY.txt")).contains("TarsosDSP"));
  }

  @Test
  void isTheSameByteForByteWhenMadeAgainElsewhere() throws Exception {
    Path again =
        PlainZip.make(
            Path.of("src/dist"),
            Path.of(System.getProperty("loopgauge.jar")),
            VERSION,
            Instant.parse(System.getProperty("loopgauge.time")),
            DIST.resolve("runtime/bin/java").toAbsolutePath(),
            Files.createDirectory(folder.resolve("again")));
    assertEquals(-1, Files.mismatch(DIST.resolve(ZIP), again));
  }
}
