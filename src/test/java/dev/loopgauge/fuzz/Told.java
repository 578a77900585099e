package dev.loopgauge.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import java.util.List;
import java.util.Map;

/** Runs commands without a sound card, and checks that they end as documented. */
final class Told {
  private Told() {}

  /** By the beginning of a line: what is quoted from a file stands further in. */
  private static boolean isUnexpected(String line) {
    return line.startsWith("something went wrong") || line.startsWith("\tat ");
  }

  static Run by(Map<String, String> environment, String... args) {
    Run run = Run.on(false, "", environment, Adapters.of(List::of), args);
    assertTrue(run.exitCode() >= ExitCode.GOOD && run.exitCode() <= ExitCode.JOURNAL, run::err);
    assertFalse(run.err().lines().anyMatch(Told::isUnexpected), run::err);
    if (List.of(args).contains("--json") && !run.out().isEmpty()) {
      boolean expected =
          !(run.json().get("error") instanceof Map<?, ?> error)
              || !"unexpected".equals(error.get("code"));
      assertTrue(expected, run::out);
    }
    return run;
  }
}
