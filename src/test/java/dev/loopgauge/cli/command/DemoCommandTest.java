package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.demo.DemoFolder;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTest {
  @TempDir private Path folder;

  @Test
  void oneMeasurementAgreesAndOneIsTwoBlocksLate() {
    Run run = Run.of("demo", "--json", "--folder", folder.toString());
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    List<?> measurements = (List<?>) run.json().get("measurements");
    assertEquals("within-budget", ((Map<?, ?>) measurements.get(0)).get("outcome"));
    Map<?, ?> late = (Map<?, ?>) measurements.get(1);
    assertEquals("outside-budget", late.get("outcome"));
    Map<?, ?> comparison = (Map<?, ?>) late.get("comparison");
    assertEquals(128, ((Number) comparison.get("differenceSamples")).doubleValue(), 0.05);
  }

  @Test
  void theCommandsItEndsWithRun() {
    Run demo = Run.of("demo", "--folder", folder.toString());
    assertEquals(ExitCode.GOOD, demo.exitCode(), demo.err());
    List<String> commands =
        demo.out().lines().filter(line -> line.startsWith("  loopgauge ")).toList();
    assertEquals(3, commands.size(), demo.out());
    for (String command : commands) {
      List<String> words = List.of(command.strip().split(" ", -1));
      Run run = Run.of(words.subList(1, words.size()).toArray(String[]::new));
      int expected = words.get(1).equals("budget") ? ExitCode.GOOD : ExitCode.OUTSIDE;
      assertEquals(expected, run.exitCode(), command + "\n" + run.err());
    }
  }

  @Test
  void leavesItsFilesInTheFolderItNames() {
    Run run = Run.of("demo", "--folder", folder.toString());
    assertTrue(run.out().contains(folder.toString()), run.out());
    for (String name :
        List.of("lantern-theatre.yaml", "budget.json", "as-budgeted.wav", "as-budgeted.json")) {
      assertTrue(Files.isRegularFile(folder.resolve(name)), name);
    }
  }

  @Test
  void aFolderWithFilesIsLeftAlone() throws IOException {
    Path mine = Files.writeString(folder.resolve("mine.txt"), "precious");
    Run run = Run.of("demo", "--folder", folder.toString());
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains(folder.toString()), run.err());
    assertEquals("precious", Files.readString(mine));
    assertFalse(Files.exists(folder.resolve("budget.json")));
  }

  @Test
  void aFolderThatCannotBeIsSaid() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "");
    Run run = Run.of("demo", "--folder", file.resolve("below").toString());
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals(2, run.err().lines().count(), run.err());
  }

  @Test
  void foldersAreNumberedOn() throws IOException {
    Path parent = folder.resolve("loopgauge-demo");
    assertEquals(parent.resolve("1"), DemoFolder.next(parent));
    assertEquals(parent.resolve("2"), DemoFolder.next(parent));
    Files.writeString(parent.resolve("3"), "a file in the way");
    assertEquals(parent.resolve("4"), DemoFolder.next(parent));
  }
}
