package dev.loopgauge.cli.command;

import dev.loopgauge.cli.terminal.Colour;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The top command and the options that all commands share. */
@Command(
    name = "loopgauge",
    sortOptions = false,
    description = {
      "Measures the real delay of an audio path and checks it against your budget.",
      "",
      "New here? `loopgauge demo` shows the whole job without a sound card, and `loopgauge help"
          + " COMMAND` explains a command."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%n",
    footer = {
      "Exit codes: 0 good; 1 measured or predicted, but not good; 2 wrong arguments or unusable"
          + " file; 3 no trustworthy measurement; 4 the sound device or audio server failed; 5 the"
          + " journal could not be read or written."
    })
public final class LoopgaugeCommand {
  @Option(
      names = "--json",
      scope = ScopeType.INHERIT,
      description = "Print one JSON document, also when it fails.")
  boolean json;

  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Show where in the program an error arose.")
  boolean debug;

  @Option(
      names = "--color",
      paramLabel = "WHEN",
      converter = Colour.Converter.class,
      scope = ScopeType.INHERIT,
      defaultValue = "auto",
      description = "Colour verdicts: auto, always or never (auto; NO_COLOR turns it off).")
  public Colour colour = Colour.AUTO;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      scope = ScopeType.INHERIT,
      description = "Show this help.")
  boolean help;

  @Option(
      names = "--json-schema",
      scope = ScopeType.INHERIT,
      description = "Print the JSON Schema of what --json prints.")
  boolean jsonSchema;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  boolean version;
}
