package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.cli.demo.Demo;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The packaged program as people run it. */
class JarIT {
  private static final String DEMO = "lantern-theatre.yaml";

  @TempDir private Path folder;
  private String chain = "";

  private record Ended(int exitCode, String out) {}

  @BeforeEach
  void writeChain() throws IOException {
    chain =
        Files.writeString(
                folder.resolve("chain.yaml"),
                """
                chain: Große Bühne
                sample-rate: 48000
                stages: { desk: { ms: 1.25 } }
                paths: { singer: { listener: house, stages: [desk] } }
                """)
            .toString();
  }

  private static Ended run(List<String> jvmOptions, String... args)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(jvmOptions);
    command.addAll(List.of("-jar", System.getProperty("loopgauge.jar")));
    command.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    Process process = builder.start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), out);
  }

  @Test
  void knowsItsVersion() throws Exception {
    Ended ended = run(List.of(), "--version");
    assertEquals(ExitCode.GOOD, ended.exitCode());
    assertTrue(ended.out().matches("loopgauge \\d+\\.\\d+\\.\\d+\\R"), ended.out());
  }

  /** Making the parser took most of the time that the version needs. */
  @ParameterizedTest
  @ValueSource(strings = {"--version", "-V"})
  void tellsItsVersionWithoutTheParser(String option) throws Exception {
    Ended ended = run(List.of("-Xlog:class+load"), option);
    assertTrue(ended.out().contains("dev.loopgauge.cli.Main "), ended.out());
    assertFalse(ended.out().contains("picocli"), ended.out());
  }

  /** Libraries carry files of the same name; the program's own must win. */
  @Test
  void carriesItsOwnLicence() throws Exception {
    assertEquals(Files.readString(Path.of("LICENSE")), inside("META-INF/LICENSE"));
  }

  /** A library without a text of its licence fails the build; here nothing may be left out. */
  @Test
  void namesAllThatIsInsideWithItsLicence() throws Exception {
    Map<String, Object> sbom = JSON.std.mapFrom(inside("META-INF/sbom/loopgauge.cdx.json"));
    assertEquals("CycloneDX", sbom.get("bomFormat"));
    String notices = inside("META-INF/THIRD-PARTY.txt");
    List<?> components = (List<?>) sbom.get("components");
    for (String library : List.of("picocli", "TarsosDSP", "jna", "sqlite-jdbc", "postgresql")) {
      assertTrue(
          components.stream().anyMatch(c -> ((Map<?, ?>) c).get("name").equals(library)), library);
    }
    for (Object each : components) {
      Map<?, ?> component = (Map<?, ?>) each;
      String line = "  " + component.get("name") + " " + component.get("version") + ": ";
      assertTrue(notices.contains(line), line);
    }
    for (String text :
        List.of("GNU LESSER GENERAL PUBLIC LICENSE", "Piotr Wendykier", "www.apache.org")) {
      assertTrue(notices.contains(text), text);
    }
  }

  private static String inside(String name) throws IOException {
    try (ZipFile jar = new ZipFile(System.getProperty("loopgauge.jar"))) {
      return new String(
          jar.getInputStream(jar.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void exitsWithTheCommandsCode() throws Exception {
    assertEquals(ExitCode.USAGE, run(List.of(), "budget", "nowhere.yaml").exitCode());
  }

  @Test
  void speaksUtf8AndPlainNumbersWhateverTheSystemSpeaks() throws Exception {
    List<String> arabic = List.of("-Duser.language=ar", "-Duser.country=EG");
    Ended ended = run(arabic, "budget", chain);
    assertEquals(ExitCode.GOOD, ended.exitCode(), ended.out());
    assertTrue(ended.out().contains("\nGroße Bühne · 48 kHz · 20 °C"), ended.out());
    assertTrue(ended.out().contains("1.250"), ended.out());
  }

  @Test
  void startsWithoutTheLibrariesItDoesNotNeed() throws Exception {
    Ended ended = run(List.of("-Xlog:class+load"), "budget", chain);
    assertTrue(ended.out().contains("dev.loopgauge.cli.command.BudgetCommand "));
    for (String heavy :
        List.of(
            "com.fasterxml",
            "AnalyzeCommand",
            "org.jtransforms",
            "com.sun.jna",
            " xt.audio",
            "capture.drivers",
            "org.jfree",
            "j2html",
            "io.javalin",
            "io.prometheus",
            "httpserver",
            "org.eclipse.jetty",
            "kotlin",
            "dev.loopgauge.screen",
            "java.awt")) {
      assertFalse(ended.out().contains(heavy), heavy);
    }
  }

  /** Both make classes anew at each start: a stream some fifty, a record's own equality eighty. */
  @Test
  void budgetStartsWithoutStreamsAndTheEqualityOfRecords() throws Exception {
    Path demo = Files.createDirectory(folder.resolve("demo"));
    try (InputStream file = Demo.class.getResourceAsStream("/dev/loopgauge/demo/" + DEMO)) {
      Files.copy(file, demo.resolve(DEMO));
    }
    Ended ended = run(List.of("-Xlog:class+load"), "budget", demo.resolve(DEMO).toString());
    assertTrue(ended.out().contains("dev.loopgauge.report.budget.Mixes "), ended.out());
    for (String heavy : List.of("java.util.stream.ReferencePipeline", "java.lang.runtime")) {
      assertFalse(ended.out().contains(heavy), heavy);
    }
  }
}
