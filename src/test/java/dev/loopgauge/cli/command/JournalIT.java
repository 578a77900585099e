package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The journal by the packaged program, from two measurements to their comparison. */
class JournalIT {
  private static final String CHAIN = "loopgauge-demo/1/lantern-theatre.yaml";

  @TempDir private Path folder;

  private Run run(String... args) throws Exception {
    Path err = folder.resolve("err");
    Map<String, String> environment = Map.of("LOOPGAUGE_DATA", folder.resolve("data").toString());
    return Jar.end(Jar.start(folder, environment, err, args), err);
  }

  private void measure(String when, String... more) throws Exception {
    String[] words =
        ("measure --yes --backend simulated --path vocal-house --journal --show Friday --chain "
                + CHAIN
                + " --when "
                + when
                + " "
                + String.join(" ", more))
            .strip()
            .split(" ");
    Run run = run(words);
    assertTrue(run.exitCode() <= ExitCode.OUTSIDE, run.err());
  }

  @Test
  void aBlockSizeThatChangedInTheMeantimeIsSeen() throws Exception {
    run("demo");
    measure("before");
    measure("after");
    Run same = run("journal", "compare", "--show", "Friday");
    assertEquals(ExitCode.GOOD, same.exitCode(), same.out() + same.err());
    measure("after", "--fault", "block-size=128");
    Run changed = run("journal", "compare", "--show", "Friday");
    assertEquals(ExitCode.OUTSIDE, changed.exitCode(), changed.out() + changed.err());
    assertTrue(changed.out().contains("CHANGED"), changed.out());
    assertTrue(changed.out().contains("block"), changed.out());
    assertEquals(ExitCode.GOOD, run("journal", "check").exitCode());
  }
}
