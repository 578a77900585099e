package dev.loopgauge.cli;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.JournalNotice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code journal check}. */
@Command(
    description = "Read all of the journal and say what is wrong with it.",
    footer = {"", "Exits with 5 when anything is."})
final class JournalCheck implements Subcommand {
  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  JournalCheck(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    try (Journal journal = place.open(console.environment())) {
      List<String> wrong = journal.check();
      List<String> lines = new ArrayList<>(wrong);
      lines.add(
          0,
          wrong.isEmpty()
              ? "CLEAN: every entry is whole and as it was stored."
              : "NOT CLEAN: " + wrong.size() + " things are wrong; keep a copy as it is.");
      return new Answer(
          wrong.isEmpty() ? ExitCode.GOOD : ExitCode.JOURNAL,
          new JournalNotice(
              "journal check",
              wrong.isEmpty() ? "clean" : "damaged",
              lines,
              Map.of("wrong", wrong)));
    }
  }
}
