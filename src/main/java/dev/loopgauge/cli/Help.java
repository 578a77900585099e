package dev.loopgauge.cli;

import dev.loopgauge.cli.terminal.Console;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The help of a command, as wide as the terminal. */
final class Help {
  private static final int LEAST_COLUMNS = 60;
  private static final int DEFAULT_COLUMNS = 80;

  /** With more options than this a synopsis is harder to read than their list. */
  private static final int MOST_IN_SYNOPSIS = 12;

  private Help() {}

  /**
   * The text.
   *
   * @param line the command
   * @param ansi how to colour it
   */
  static String text(CommandLine line, Console console, Ansi ansi) {
    UsageMessageSpec usage = line.getCommandSpec().usageMessage();
    Optional<Integer> columns = columns(console.environment());
    usage.width(columns.orElse(DEFAULT_COLUMNS));
    usage.autoWidth(columns.isEmpty() && console.terminal());
    usage.optionListHeading("%nOptions:%n");
    usage.abbreviateSynopsis(line.getCommandSpec().options().size() > MOST_IN_SYNOPSIS);
    if (line.getParent() == null) {
      usage.commandListHeading("");
      line.getHelpSectionMap()
          .put(
              UsageMessageSpec.SECTION_KEY_COMMAND_LIST,
              help -> commands(help, line.getSubcommands()));
    } else if (usage.footer().length > 0) {
      usage.footerHeading(usage.footer().length == 1 ? "%nExample:%n" : "%nExamples:%n");
    }
    StringWriter text = new StringWriter();
    line.usage(new PrintWriter(text), ansi);
    return text.toString();
  }

  /** What COLUMNS says, at least {@value #LEAST_COLUMNS}. */
  private static Optional<Integer> columns(Map<String, String> environment) {
    String said = environment.getOrDefault("COLUMNS", "");
    return said.matches("[0-9]{1,4}")
        ? Optional.of(Math.max(LEAST_COLUMNS, Integer.parseInt(said)))
        : Optional.empty();
  }

  private static String commands(CommandLine.Help help, Map<String, CommandLine> all) {
    StringBuilder text = new StringBuilder();
    for (Map.Entry<String, List<String>> heading : Commands.HEADINGS.entrySet()) {
      text.append(help.createHeading("%n" + heading.getKey() + ":%n"));
      CommandLine.Help.TextTable table =
          CommandLine.Help.TextTable.forColumns(
              help.colorScheme(),
              new CommandLine.Help.Column(13, 2, CommandLine.Help.Column.Overflow.SPAN),
              new CommandLine.Help.Column(
                  help.commandSpec().usageMessage().width() - 13,
                  2,
                  CommandLine.Help.Column.Overflow.WRAP));
      for (String name : heading.getValue()) {
        String[] description = all.get(name).getCommandSpec().usageMessage().description();
        table.addRowValues(name, description[0]);
      }
      text.append(table);
    }
    return text.toString();
  }
}
