package dev.loopgauge.dist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.outside.Tool;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The part of the JDK that goes with the program. */
class RuntimeImageIT {
  private static final Path RUNTIME = Path.of(System.getProperty("loopgauge.dist"), "runtime");
  private static final String JAVA = RUNTIME.resolve("bin/java").toString();

  private static String said(String... command) throws Exception {
    return new String(Tool.run(command), StandardCharsets.UTF_8);
  }

  @Test
  void holdsTheModulesThatTheJarNamesAndNoCompiler() throws Exception {
    String modules = said(JAVA, "--list-modules");
    assertTrue(modules.contains("java.sql@"), modules);
    assertTrue(modules.contains("java.desktop@"), modules);
    assertFalse(modules.contains("jdk.compiler"), modules);
  }

  /** TLS to a database needs the curves; a console of Windows may speak any code page. */
  @Test
  void findsTheServicesThatNoClassNames() throws Exception {
    assertEquals(
        "SunEC\nIBM850\nwindows-31j\n",
        said(JAVA, "-cp", "target/test-classes", "dev.loopgauge.dist.Probe"));
  }

  @Test
  void carriesTheJdksOwnLicences() throws Exception {
    assertTrue(Files.isDirectory(RUNTIME.resolve("legal/java.base")));
  }
}
