package dev.loopgauge.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** The journal's file: what is whole is read, and nothing else. */
final class JournalTarget implements Target {
  private static final List<String> COMMANDS =
      List.of("list", "export", "check", "list --shows", "history --path vocal-house");

  private final KeptEntries kept;
  private final byte[] whole;
  private final List<String> ids;

  JournalTarget(Path folder) throws Exception {
    kept = KeptEntries.in(folder);
    whole = Files.readAllBytes(kept.journal());
    ids = kept.entries().stream().map(entry -> entry.heading().id().toString()).toList();
  }

  @Override
  public List<byte[]> seeds() {
    return List.of(whole);
  }

  @Override
  public void check(byte[] input) throws Exception {
    Files.write(kept.journal(), input);
    for (String command : COMMANDS) {
      Run run = Told.by(kept.environment(), ("journal " + command + " --json").split(" "));
      List<Integer> codes =
          List.of(ExitCode.GOOD, ExitCode.OUTSIDE, ExitCode.NOT_TRUSTWORTHY, ExitCode.JOURNAL);
      assertTrue(codes.contains(run.exitCode()), run::out);
      if (run.json().get("entries") instanceof List<?> read) {
        read.forEach(entry -> assertTrue(ids.contains(((Map<?, ?>) entry).get("id")), run::out));
      }
    }
  }
}
