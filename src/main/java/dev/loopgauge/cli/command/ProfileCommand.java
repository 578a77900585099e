package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.report.rig.ProfileDocument;
import dev.loopgauge.report.rig.ProfilesDocument;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.ProfileStore;
import dev.loopgauge.setup.SetupException;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Keeps what a measurement needs to know about a place. */
@Command(
    name = "profile",
    sortOptions = false,
    description = {"Keep device, patching and level under a name, for --profile NAME."},
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "  loopgauge profile save foh --backend java-sound --send 2 --return 2 --reference-send 1 --reference-return 1"
    })
public final class ProfileCommand {
  private ProfileCommand() {}

  /** The command with its own subcommands. */
  public static CommandLine line(Console console) {
    return new CommandLine(new ProfileCommand())
        .addSubcommand("save", new Save(console))
        .addSubcommand("list", new ListAll(console))
        .addSubcommand("show", new Show(console))
        .addSubcommand("rename", new Rename(console))
        .addSubcommand("delete", new Delete(console));
  }

  private static ProfileStore store(Console console) {
    return DataFolder.of(console.environment()).profiles();
  }

  /** {@code profile save}. */
  @Command(
      sortOptions = false,
      description = "Keep the options under a name; with --profile, on top of that one.",
      footer = {"  loopgauge profile save foh --backend jack --send 2 --return 2"})
  static final class Save implements Subcommand {
    private final Console console;

    @Parameters(paramLabel = "NAME", description = "The profile's name.")
    private String name = "";

    @Mixin private final LiveOptions live = new LiveOptions();

    @Option(names = "--replace", description = "Replace the profile of that name.")
    private boolean replace;

    Save(Console console) {
      this.console = console;
    }

    @Override
    public Answer answer() throws SetupException {
      Profile profile = live.choice().settings(DataFolder.of(console.environment()));
      ProfileStore store = store(console);
      Path file = replace ? store.replace(name, profile) : store.save(name, profile);
      return Answer.good(ProfileDocument.of("profile save", name, file, profile));
    }
  }

  /** {@code profile list}. */
  @Command(
      description = "List the profiles.",
      footer = {"  loopgauge profile list"})
  static final class ListAll implements Subcommand {
    private final Console console;

    ListAll(Console console) {
      this.console = console;
    }

    @Override
    public Answer answer() throws SetupException {
      ProfileStore store = store(console);
      return Answer.good(ProfilesDocument.of("profile list", store.folder(), store.names()));
    }
  }

  /** {@code profile show}. */
  @Command(
      description = "Show what a profile says.",
      footer = {"  loopgauge profile show foh"})
  static final class Show implements Subcommand {
    private final Console console;

    @Parameters(paramLabel = "NAME", description = "The profile's name.")
    private String name = "";

    Show(Console console) {
      this.console = console;
    }

    @Override
    public Answer answer() throws SetupException {
      ProfileStore store = store(console);
      Profile profile = store.load(name);
      return Answer.good(ProfileDocument.of("profile show", name, store.file(name), profile));
    }
  }

  /** {@code profile rename}. */
  @Command(
      description = "Give a profile another name.",
      footer = {"  loopgauge profile rename foh festival"})
  static final class Rename implements Subcommand {
    private final Console console;

    @Parameters(index = "0", paramLabel = "NAME", description = "The profile's name.")
    private String name = "";

    @Parameters(index = "1", paramLabel = "NEW", description = "Its new name.")
    private String renamed = "";

    Rename(Console console) {
      this.console = console;
    }

    @Override
    public Answer answer() throws SetupException {
      ProfileStore store = store(console);
      Path file = store.rename(name, renamed);
      return Answer.good(ProfileDocument.of("profile rename", renamed, file, store.load(renamed)));
    }
  }

  /** {@code profile delete}. */
  @Command(
      description = "Delete a profile; list those that are left.",
      footer = {"  loopgauge profile delete festival"})
  static final class Delete implements Subcommand {
    private final Console console;

    @Parameters(paramLabel = "NAME", description = "The profile's name.")
    private String name = "";

    Delete(Console console) {
      this.console = console;
    }

    @Override
    public Answer answer() throws SetupException {
      ProfileStore store = store(console);
      store.delete(name);
      return Answer.good(ProfilesDocument.of("profile delete", store.folder(), store.names()));
    }
  }
}
