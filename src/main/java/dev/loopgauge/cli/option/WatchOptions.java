package dev.loopgauge.cli.option;

import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.job.live.WatchRequest;
import dev.loopgauge.journal.When;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a watch over all paths of a chain file takes. */
public final class WatchOptions {
  /** What hears of a watch beside the screen. */
  private static final class Outlets {
    @Option(
        names = "--metrics",
        paramLabel = "PORT",
        converter = Converters.Port.class,
        description =
            "Serve delay, uncertainty, age, dropouts and events of each path as OpenMetrics text on"
                + " this port, under /metrics, to this computer alone; 0 for any port. A delay that"
                + " isn't read now is left out.")
    private Optional<Integer> metrics = Optional.empty();

    @Option(
        names = "--on-event",
        paramLabel = "COMMAND",
        description =
            "Run COMMAND when an event starts or ends, with its JSON line on standard input; one at a"
                + " time, 5 seconds each. No shell: blanks part words, '...' or \"...\" keeps them"
                + " together, nothing else means anything. What it prints is thrown away.")
    private Optional<String> onEvent = Optional.empty();
  }

  @Option(
      names = "--for",
      paramLabel = "TIME",
      converter = Converters.Minutes.class,
      description = "How long: 30s, 30m or 2h; left out, until Ctrl-C.")
  private Optional<Double> minutes = Optional.empty();

  @Option(
      names = "--window",
      paramLabel = "S",
      converter = Converters.Positive.class,
      description = "How much sound each reading takes, 0.5 to 30 seconds (2).")
  private double windowSeconds = WatchRequest.USUAL_WINDOW_SECONDS;

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  private Optional<String> profile = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhere to listen:%n")
  private DeviceOptions device = new DeviceOptions();

  @Mixin private final ShowOptions kept = new ShowOptions();

  @ArgGroup(validate = false, heading = "%nWho else is told:%n")
  private Outlets outlets = new Outlets();

  @ArgGroup(validate = false, heading = "%nThe simulated rig, with --backend simulated:%n")
  private RigOptions rig = new RigOptions();

  /** What was chosen. */
  public WatchRequest request(Path chain) {
    return new WatchRequest(
        chain,
        profile,
        device.choice(),
        windowSeconds,
        Math.min(WatchRequest.USUAL_STEP_SECONDS, windowSeconds),
        minutes,
        rig.choice(),
        new KeepChoice(
            kept.journal(),
            kept.show(),
            kept.journal().map(named -> When.DURING),
            Optional.empty(),
            Map.of(),
            Optional.empty(),
            false));
  }

  /** The port to serve figures on. */
  public Optional<Integer> metrics() {
    return outlets.metrics;
  }

  /** The command to run on events. */
  public Optional<String> onEvent() {
    return outlets.onEvent;
  }
}
