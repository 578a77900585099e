package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NeedsToolConditionTest {
  @TempDir Path folder;

  @Test
  void runsWhereEverythingIsThere() throws Exception {
    Path program = Files.createFile(folder.resolve("a-program"));
    assertTrue(program.toFile().setExecutable(true));

    assertFalse(condition("0").evaluate("a-program", folder.toString()).isDisabled());
  }

  @Test
  void skipsAndNamesWhatIsMissing() {
    var result = condition("0").evaluate("no-program", folder.resolve("no-file").toString());

    assertTrue(result.isDisabled());
    assertEquals(
        "not installed: no-program, " + folder.resolve("no-file"),
        result.getReason().orElseThrow());
  }

  @Test
  void failsWhereWhatIsRequiredIsMissing() {
    assertThrows(IllegalStateException.class, () -> condition("1").evaluate("no-program"));
  }

  private NeedsToolCondition condition(String require) {
    return new NeedsToolCondition(
        Map.of("PATH", folder.toString(), NeedsToolCondition.REQUIRE, require));
  }
}
