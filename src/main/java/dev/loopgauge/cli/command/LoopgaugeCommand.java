package dev.loopgauge.cli.command;

import dev.loopgauge.cli.terminal.Colour;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The top command and the options that all commands share. */
@Command(
    name = "loopgauge",
    description = "Proves how late an audio path really is, and whether its budget says so.",
    synopsisSubcommandLabel = "COMMAND",
    versionProvider = LoopgaugeCommand.Version.class,
    footerHeading = "%n",
    footer = {
      "Exit codes: 0 good; 1 outside its budget, or not shown to be inside; 2 wrong",
      "arguments or unusable file; 3 no trustworthy measurement; 4 the sound device",
      "or audio server failed; 5 the journal could not be read or written.",
      "New here? `loopgauge demo` shows the whole job without a sound card."
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
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  boolean version;

  /** The version, from the jar's manifest. */
  public static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"loopgauge " + number()};
    }

    /** The number alone: {@code 0.1.0}. */
    public static String number() {
      String version = Version.class.getPackage().getImplementationVersion();
      return version == null ? "(not packaged)" : version;
    }
  }
}
