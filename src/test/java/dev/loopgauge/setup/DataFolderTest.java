package dev.loopgauge.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DataFolderTest {
  @Test
  void isTheOneThatTheEnvironmentNames() {
    assertEquals(
        Path.of("some/where"), DataFolder.of(Map.of("LOOPGAUGE_DATA", "some/where")).path());
  }

  @Test
  void isOtherwiseTheUsualOne() {
    assertTrue(DataFolder.of(Map.of()).path().toString().contains("loopgauge"));
    assertEquals(DataFolder.of(Map.of()), DataFolder.of(Map.of("LOOPGAUGE_DATA", " ")));
  }

  private static String usual(String system, Map<String, String> environment) {
    return DataFolder.of(environment, system, Path.of("/home/me")).path().toString();
  }

  /** XDG Base Directory Specification 0.8: unset, empty or not absolute is as if unset. */
  @ParameterizedTest
  @CsvSource({
    ",/home/me/.local/share/loopgauge",
    "'',/home/me/.local/share/loopgauge",
    "data,/home/me/.local/share/loopgauge",
    "/srv/data,/srv/data/loopgauge"
  })
  void onLinuxIsInTheFolderThatXdgNames(String named, String expected) {
    Map<String, String> environment = named == null ? Map.of() : Map.of("XDG_DATA_HOME", named);
    assertEquals(expected, usual("Linux", environment));
  }

  @Test
  void onWindowsIsInTheLocalDataOfApplications() {
    Map<String, String> environment = Map.of("LOCALAPPDATA", "/c/local", "XDG_DATA_HOME", "/x");
    assertEquals("/c/local/loopgauge", usual("Windows 11", environment));
    assertEquals("/home/me/AppData/Local/loopgauge", usual("Windows 10", Map.of()));
  }

  @Test
  void onMacOsIsInApplicationSupport() {
    Map<String, String> environment = Map.of("XDG_DATA_HOME", "/x");
    assertEquals("/home/me/Library/Application Support/loopgauge", usual("Mac OS X", environment));
  }
}
