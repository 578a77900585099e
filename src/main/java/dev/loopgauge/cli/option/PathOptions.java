package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.LiveRequest;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What every command takes that measures one path by playing and recording. */
public final class PathOptions {
  @Mixin private final LiveOptions live = new LiveOptions();

  @ArgGroup(validate = false, heading = "%nWhat to compare with:%n")
  private BudgetOptions budget = new BudgetOptions();

  @ArgGroup(validate = false, heading = "%nWhat the host or plug-in shows:%n")
  private HostCheckOptions reported = new HostCheckOptions();

  @ArgGroup(validate = false, heading = "%nThe record, with --journal:%n")
  private JournalOptions journal = new JournalOptions();

  @ArgGroup(validate = false, heading = "%nThe simulated rig, with --backend simulated:%n")
  private RigOptions rig = new RigOptions();

  @Mixin private final ArrivalOption arrival = new ArrivalOption();

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean agreed;

  /** What was chosen. */
  public LiveRequest request() {
    return new LiveRequest(
        live.choice(),
        budget.choice(),
        reported.report(),
        rig.choice(),
        arrival.choice(),
        journal.choice(),
        agreed);
  }
}
