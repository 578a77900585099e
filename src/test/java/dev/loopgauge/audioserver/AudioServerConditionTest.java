package dev.loopgauge.audioserver;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AudioServerConditionTest {
  @TempDir Path empty;

  @Test
  void skipsWhereTheServerIsMissing() {
    var result = new AudioServerCondition(Map.of("PATH", empty.toString())).evaluate();
    assertTrue(result.isDisabled(), result::toString);
  }

  @Test
  void failsWhereTheServerIsMissingButRequired() {
    var condition =
        new AudioServerCondition(
            Map.of("PATH", empty.toString(), AudioServerCondition.REQUIRE, "1"));
    assertThrows(IllegalStateException.class, condition::evaluate);
  }
}
