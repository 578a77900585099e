package dev.loopgauge.fuzz;

import java.nio.file.Path;
import java.util.List;

/** All targets by name. */
final class Targets {
  static final List<String> NAMES =
      List.of(
          "wav",
          "chain",
          "csv",
          "json",
          "documents",
          "series",
          "profiles",
          "calibrations",
          "arguments",
          "journal",
          "commands");

  private Targets() {}

  /**
   * A target.
   *
   * @param folder where it may write
   */
  static Target of(String name, Path folder) throws Exception {
    return switch (name) {
      case "wav" -> new WavTarget(folder.resolve("fuzzed.wav"));
      case "chain" -> new ChainTarget();
      case "csv", "json" -> new ExportTarget(name, folder);
      case "documents" -> new DocumentTarget();
      case "series" -> new SeriesTarget();
      case "profiles" -> new ProfileTarget(folder);
      case "calibrations" -> new CalibrationTarget(folder);
      case "arguments" -> new ArgumentsTarget();
      case "journal" -> new JournalTarget(folder);
      case "commands" -> new CommandsTarget(folder);
      default -> throw new IllegalArgumentException("no target " + name + " among " + NAMES);
    };
  }
}
