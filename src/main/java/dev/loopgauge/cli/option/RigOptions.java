package dev.loopgauge.cli.option;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.simulated.Fault;
import dev.loopgauge.capture.simulated.FaultFormatException;
import dev.loopgauge.capture.simulated.SimulatedBackend;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.cli.wiring.Backends;
import dev.loopgauge.job.ChosenPath;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options of the built-in rig. */
public final class RigOptions {
  @Option(
      names = "--fault",
      paramLabel = "FAULT",
      description = "What is wrong with the simulated rig, such as block-size=128. Repeatable.")
  private List<String> faults = List.of();

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "The chance of the simulated rig (${DEFAULT-VALUE}).")
  private long seed;

  /**
   * The built-in rig.
   *
   * @throws UsageException when it isn't said what rig to imitate, or a fault is none
   */
  public AudioBackend rig(Optional<ChosenPath> chosen) {
    ChosenPath path = imitated(chosen);
    try {
      return new SimulatedBackend(
          path.chain(), path.path(), faults.stream().map(Fault::parse).toList(), seed);
    } catch (FaultFormatException e) {
      throw new UsageException(e.getMessage(), e.hint());
    }
  }

  /** The same rig with its host at another block size. */
  public AudioBackend rig(Optional<ChosenPath> chosen, int blockSize) {
    ChosenPath path = imitated(chosen);
    return rig(
        Optional.of(
            new ChosenPath(
                path.chain().withBlockSize(blockSize), path.path(), path.allowSamples())));
  }

  private static ChosenPath imitated(Optional<ChosenPath> chosen) {
    return chosen.orElseThrow(
        () ->
            new UsageException(
                "expected --chain and --path, which say what rig to imitate",
                "`loopgauge demo` writes a chain file to try it with"));
  }

  /**
   * The back end of a name: the built-in rig, or one of those that reach real sound.
   *
   * @throws UsageException as {@link #rig}, and when faults were asked for elsewhere: nobody shall
   *     take a real rig for a broken one
   */
  public AudioBackend backend(Backends backends, String name, Optional<ChosenPath> chosen) {
    if (name.equals(LiveOptions.SIMULATED)) {
      return rig(chosen);
    }
    if (!faults.isEmpty()) {
      throw new UsageException(
          "--fault is for the simulated rig alone", "leave it out, or --backend simulated");
    }
    return backends.named(name);
  }
}
