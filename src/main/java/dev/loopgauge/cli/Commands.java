package dev.loopgauge.cli;

import dev.loopgauge.cli.command.AlignCommand;
import dev.loopgauge.cli.command.AnalyzeCommand;
import dev.loopgauge.cli.command.BudgetCommand;
import dev.loopgauge.cli.command.CalibrateCommand;
import dev.loopgauge.cli.command.DemoCommand;
import dev.loopgauge.cli.command.DevicesCommand;
import dev.loopgauge.cli.command.JournalCommand;
import dev.loopgauge.cli.command.LoopgaugeCommand;
import dev.loopgauge.cli.command.MeasureCommand;
import dev.loopgauge.cli.command.PlanCommand;
import dev.loopgauge.cli.command.ProfileCommand;
import dev.loopgauge.cli.command.ReportCommand;
import dev.loopgauge.cli.command.SeriesCommand;
import dev.loopgauge.cli.command.SignalCommand;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.wiring.Backends;
import java.util.List;
import picocli.CommandLine;

/** The commands by name. */
final class Commands {
  /** In the order in which the help lists them. */
  static final List<String> NAMES =
      List.of(
          "demo",
          "devices",
          "profile",
          "signal",
          "calibrate",
          "budget",
          "measure",
          "analyze",
          "series",
          "align",
          "plan",
          "journal",
          "report");

  private Commands() {}

  /**
   * The command line for these arguments. Only the command they name is built, since reading the
   * options of all would be most of the time of a quick command; without a known name, all are, so
   * that help and suggestions know them.
   */
  static CommandLine lineFor(String[] args, Console console, Backends backends) {
    CommandLine line = new CommandLine(new LoopgaugeCommand()).setExpandAtFiles(false);
    boolean named = args.length > 0 && NAMES.contains(args[0]);
    for (String name : named ? List.of(args[0]) : NAMES) {
      line.addSubcommand(name, create(name, console, backends));
    }
    return line;
  }

  private static Object create(String name, Console console, Backends backends) {
    return switch (name) {
      case "demo" -> new DemoCommand();
      case "devices" -> new DevicesCommand(backends);
      case "profile" -> ProfileCommand.line(console);
      case "signal" -> new SignalCommand();
      case "calibrate" -> new CalibrateCommand(console, backends);
      case "budget" -> new BudgetCommand();
      case "measure" -> new MeasureCommand(console, backends);
      case "analyze" -> new AnalyzeCommand(console);
      case "series" -> new SeriesCommand(console, backends);
      case "align" -> new AlignCommand(console);
      case "plan" -> new PlanCommand();
      case "journal" -> JournalCommand.line(console);
      case "report" -> new ReportCommand(console);
      default -> throw new IllegalArgumentException("no command " + name);
    };
  }
}
