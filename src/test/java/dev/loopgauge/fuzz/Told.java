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

  static Run by(Map<String, String> environment, String... args) {
    Run run = Run.on(false, "", environment, Adapters.of(List::of), args);
    assertTrue(run.exitCode() >= ExitCode.GOOD && run.exitCode() <= ExitCode.JOURNAL, run::err);
    String all = run.out() + run.err();
    assertFalse(all.contains("something went wrong") || all.contains("\tat "), all);
    if (List.of(args).contains("--json") && !run.out().isEmpty()) {
      run.json();
    }
    return run;
  }
}
