package dev.loopgauge.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

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
}
