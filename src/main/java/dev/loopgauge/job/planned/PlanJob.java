package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Conditions;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.UsageException;
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
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Chooses block size, sample rate, and which paths go through the host.
 *
 * @param chainFile the chain file
 * @param blockSizes the block sizes that the host offers
 * @param rates the rates that all can run at; empty for the chain's own
 * @param keptInHost in-ear and wedge paths that need the host
 * @param mayLeaveHost house and stream paths that could do without
 * @param rule what judges sound against picture
 * @param fits what block series found, as {@code PATH=FILE}
 */
public record PlanJob(
    Path chainFile,
    List<Integer> blockSizes,
    List<SampleRate> rates,
    List<String> keptInHost,
    List<String> mayLeaveHost,
    PictureRule rule,
    List<String> fits) {
  /** Copies the lists. */
  public PlanJob {
    blockSizes = List.copyOf(blockSizes);
    rates = List.copyOf(rates);
    keptInHost = List.copyOf(keptInHost);
    mayLeaveHost = List.copyOf(mayLeaveHost);
    fits = List.copyOf(fits);
  }

  /**
   * Chooses.
   *
   * @throws ChainFormatException when the file is not a chain
   * @throws UsageException when it can't be read, counts no blocks, or an option doesn't fit it
   */
  public Answer run() throws ChainFormatException {
    Chain chain = ChainFile.read(chainFile);
    PlanRequest request = request(chain);
    PlanDocument document = PlanDocument.of(request, Plan.of(request));
    return Answer.inside(!document.choices().isEmpty(), document);
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
        chain, sizes(), rates, free(chain), rule, PathDelays.fitted(found), loads);
  }

  private List<Integer> sizes() {
    for (int size : blockSizes) {
      if (size > Conditions.LARGEST_BLOCK) {
        throw new UsageException(
            "expected --block-sizes up to " + Conditions.LARGEST_BLOCK + ", found " + size,
            "give a block size that the host offers");
      }
    }
    return blockSizes;
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
