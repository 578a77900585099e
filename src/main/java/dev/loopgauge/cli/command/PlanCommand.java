package dev.loopgauge.cli.command;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Conditions;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.RuleConverter;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.recorded.FitFile;
import dev.loopgauge.plan.BlockFit;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.PathDelays;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.report.planned.PlanDocument;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Chooses block size, sample rate and routing. */
@Command(
    description =
        "Choose block size, sample rate, and which paths go through the host, so that every"
            + " listener is within limits.",
    footer = {
      "",
      "A path enters the host where a stage is stated in blocks, is reported-by: host,",
      "or has a name that begins with host. In-ear and wedge paths may be taken from",
      "before it, by a second patch of the same input; house and stream paths stay.",
      "Best first: the largest block, then sound closest to picture, then the fewest",
      "paths re-patched."
    })
public final class PlanCommand implements Subcommand {
  /** AES5: 48 kHz, also 44.1 and 96 kHz (from memory). */
  private static final List<Integer> RATES = List.of(44_100, 48_000, 96_000);

  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chainFile = Path.of("");

  @Option(
      names = "--block-size",
      paramLabel = "N",
      split = ",",
      converter = Converters.Count.class,
      description = "A block size that the host offers, or several (16 to 4096).")
  private List<Integer> blockSizes = BlockSizes.USUAL;

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      split = ",",
      converter = Converters.Rate.class,
      description = "A rate that all can run at, or several (44100, 48000, 96000 and its own).")
  private List<SampleRate> rates = List.of();

  @Option(
      names = "--keep-in-host",
      paramLabel = "PATH",
      description = "An in-ear or wedge path that needs the host. May be given again.")
  private List<String> keptInHost = List.of();

  @Option(
      names = "--may-leave-host",
      paramLabel = "PATH",
      description = "A house or stream path that could do without. May be given again.")
  private List<String> mayLeaveHost = List.of();

  @Option(
      names = "--rule",
      paramLabel = "RULE",
      defaultValue = "ebu-r37",
      converter = RuleConverter.class,
      description = "What judges sound against picture, as in `budget` (${DEFAULT-VALUE}).")
  private PictureRule rule = PictureRule.EBU_R37;

  @Option(
      names = "--fit",
      paramLabel = "PATH=FILE",
      description =
          "What `series --json` found on a path, used at its sample rate in place of the"
              + " prediction. Settings at which sound dropped out are left out.")
  private List<String> fits = List.of();

  @Override
  public Answer answer() throws ChainFormatException {
    Chain chain = ChainFile.read(chainFile);
    PlanRequest request = request(chain);
    PlanDocument document = new PlanDocument(request, Plan.of(request));
    boolean nothingFits = document.plan().choices().isEmpty();
    return new Answer(nothingFits ? ExitCode.OUTSIDE : ExitCode.GOOD, document);
  }

  private PlanRequest request(Chain chain) {
    if (!chain.countsBlocks()) {
      throw new UsageException(
          "expected a stage stated in blocks in " + chainFile + ", found none",
          "state what the host adds, for example host: { blocks: 2 }");
    }
    Map<String, BlockFit> found = new HashMap<>();
    Map<Setting, Load> loads = new HashMap<>();
    for (String given : fits) {
      FitFile file = FitFile.read(chain, given);
      if (found.put(file.path(), file.fit()) != null) {
        throw new UsageException("two fits of path " + file.path(), "give the later one only");
      }
      file.loads().forEach((setting, load) -> loads.merge(setting, load, Load::worse));
    }
    return new PlanRequest(
        chain, sizes(), rates(chain), free(chain), rule, PathDelays.fitted(found), loads);
  }

  private List<Integer> sizes() {
    for (int size : blockSizes) {
      if (size > Conditions.LARGEST_BLOCK) {
        throw new UsageException(
            "expected --block-size up to " + Conditions.LARGEST_BLOCK + ", found " + size,
            "give a block size that the host offers");
      }
    }
    return blockSizes;
  }

  private List<SampleRate> rates(Chain chain) {
    if (!rates.isEmpty()) {
      return rates;
    }
    List<SampleRate> all = new ArrayList<>(RATES.stream().map(SampleRate::new).toList());
    all.add(chain.rate());
    return all;
  }

  private Set<String> free(Chain chain) {
    Set<String> free = new HashSet<>(mayLeaveHost);
    chain.paths().values().stream()
        .filter(path -> Set.of(Listener.IN_EAR, Listener.WEDGE).contains(path.listener()))
        .forEach(path -> free.add(path.name()));
    keptInHost.forEach(kept -> free.remove(chain.path(kept).name()));
    return free;
  }
}
