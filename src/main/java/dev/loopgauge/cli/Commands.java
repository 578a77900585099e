package dev.loopgauge.cli;

import dev.loopgauge.cli.command.AlignCommand;
import dev.loopgauge.cli.command.AnalyzeCommand;
import dev.loopgauge.cli.command.BudgetCommand;
import dev.loopgauge.cli.command.CalibrateCommand;
import dev.loopgauge.cli.command.CheckCommand;
import dev.loopgauge.cli.command.CompletionCommand;
import dev.loopgauge.cli.command.DemoCommand;
import dev.loopgauge.cli.command.DevicesCommand;
import dev.loopgauge.cli.command.FollowCommand;
import dev.loopgauge.cli.command.HostCommand;
import dev.loopgauge.cli.command.JournalCommand;
import dev.loopgauge.cli.command.LoopgaugeCommand;
import dev.loopgauge.cli.command.MeasureCommand;
import dev.loopgauge.cli.command.NewCommand;
import dev.loopgauge.cli.command.PairsCommand;
import dev.loopgauge.cli.command.PatchCommand;
import dev.loopgauge.cli.command.PlanCommand;
import dev.loopgauge.cli.command.ProfileCommand;
import dev.loopgauge.cli.command.ReportCommand;
import dev.loopgauge.cli.command.RoundCommand;
import dev.loopgauge.cli.command.ScreenCommand;
import dev.loopgauge.cli.command.SeriesCommand;
import dev.loopgauge.cli.command.SignalCommand;
import dev.loopgauge.cli.command.SoakCommand;
import dev.loopgauge.cli.command.WatchCommand;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.MicrophonePermission;
import dev.loopgauge.job.live.Site;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine;

/** The commands by name. */
final class Commands {
  /** The headings of the help, each with its commands, in the order of a show's day. */
  static final Map<String, List<String>> HEADINGS = headings();

  private static final String COMPLETION = "completion";

  private Commands() {}

  private static Map<String, List<String>> headings() {
    Map<String, List<String>> headings = new LinkedHashMap<>();
    headings.put("Plan", List.of("budget", "plan", "align", "new", "check"));
    headings.put("Patch", List.of("devices", "profile", "patch", "calibrate"));
    headings.put("Measure", List.of("measure", "round", "host", "soak", "watch"));
    headings.put("Recordings", List.of("signal", "analyze", "follow", "pairs", "series"));
    headings.put("Record", List.of("journal", "report"));
    headings.put("Look", List.of("demo", "screen"));
    return headings;
  }

  /** All that the help lists. */
  static List<String> names() {
    List<String> names = new ArrayList<>();
    for (List<String> commands : HEADINGS.values()) {
      names.addAll(commands);
    }
    return List.copyOf(names);
  }

  /**
   * The command line for these arguments. Only the command they name is built, since reading the
   * options of all would be most of the time of a quick command; for the version alone none is;
   * without a known name, all are, so that help, completion and suggestions know them.
   */
  static CommandLine lineFor(List<String> args, Console console, Supplier<AudioSystem> audio) {
    CommandLine line = new CommandLine(new LoopgaugeCommand()).setExpandAtFiles(false);
    List<String> needed = needed(args);
    for (String name : needed) {
      line.addSubcommand(name, create(name, console, audio));
    }
    if (needed.size() > 1) {
      line.addSubcommand(COMPLETION, new CompletionCommand());
    }
    return line.registerConverter(Path.class, new Converters.FileName());
  }

  private static List<String> needed(List<String> args) {
    if (!args.isEmpty() && names().contains(args.get(0))) {
      return List.of(args.get(0));
    }
    boolean optionsAlone = args.stream().allMatch(arg -> arg.startsWith("-"));
    return optionsAlone && args.contains("--version") ? List.of() : names();
  }

  /** A command. What plays and records is made for those alone that do. */
  private static Object create(String name, Console console, Supplier<AudioSystem> audio) {
    return switch (name) {
      case "budget" -> new BudgetCommand();
      case "plan" -> new PlanCommand();
      case "align" -> new AlignCommand(console);
      case "new" -> new NewCommand(console);
      case "check" -> new CheckCommand();
      case "profile" -> ProfileCommand.line(console);
      case "signal" -> new SignalCommand();
      case "analyze" -> new AnalyzeCommand(console);
      case "follow" -> new FollowCommand(console);
      case "pairs" -> new PairsCommand(console);
      case "journal" -> JournalCommand.line(console);
      case "report" -> new ReportCommand(console);
      default -> live(name, console, audio.get());
    };
  }

  private static Object live(String name, Console console, AudioSystem audio) {
    String system = System.getProperty("os.name");
    AudioSystem watched = MicrophonePermission.watched(audio, console, system);
    Site site = new Site(watched, console, console.environment());
    return switch (name) {
      case "devices" -> new DevicesCommand(audio);
      case "patch" -> new PatchCommand(site);
      case "calibrate" -> new CalibrateCommand(site);
      case "measure" -> new MeasureCommand(site);
      case "round" -> new RoundCommand(site);
      case "host" -> new HostCommand(site);
      case "soak" -> new SoakCommand(site);
      case "watch" -> new WatchCommand(site, console);
      case "series" -> new SeriesCommand(site);
      case "screen" -> new ScreenCommand(site);
      case "demo" -> new DemoCommand(audio.rig());
      default -> throw new IllegalArgumentException("no command " + name);
    };
  }
}
