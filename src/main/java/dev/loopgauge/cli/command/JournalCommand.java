package dev.loopgauge.cli.command;

import dev.loopgauge.cli.terminal.Console;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Reads what `measure --journal` kept. */
@Command(
    name = "journal",
    sortOptions = false,
    description = {
      "Read the record of your shows: list, compare, follow, exchange, check, put right."
    },
    synopsisSubcommandLabel = "COMMAND",
    footer = {"  loopgauge journal list"})
public final class JournalCommand {
  private JournalCommand() {}

  /** The command with its own subcommands. */
  public static CommandLine line(Console console) {
    return new CommandLine(new JournalCommand())
        .addSubcommand("list", new JournalList(console))
        .addSubcommand("show", new JournalShow(console))
        .addSubcommand("compare", new JournalCompare(console))
        .addSubcommand("history", new JournalHistory(console))
        .addSubcommand("export", new JournalExport(console))
        .addSubcommand("import", new JournalImport(console))
        .addSubcommand("check", new JournalCheck(console))
        .addSubcommand("add", new JournalAdd(console))
        .addSubcommand("relabel", new JournalRelabel(console))
        .addSubcommand("reread", new JournalReread(console));
  }
}
