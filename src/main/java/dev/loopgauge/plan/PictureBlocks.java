package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Hearing;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The block sizes that may be advised to bring sound nearer to a picture: those at which no limit
 * is passed that holds now.
 */
public final class PictureBlocks {
  private final List<Chain> rigs;
  private final PathDelays delays;
  private final PictureRule rule;

  private PictureBlocks(List<Chain> rigs, PathDelays delays, PictureRule rule) {
    this.rigs = List.copyOf(rigs);
    this.delays = delays;
    this.rule = rule;
  }

  /** Of some block sizes for a chain. */
  public static PictureBlocks of(
      Chain chain, PathDelays delays, PictureRule rule, List<Integer> blockSizes) {
    if (chain.paths().values().stream().allMatch(path -> path.picture().isEmpty())) {
      return new PictureBlocks(List.of(), delays, rule);
    }
    Set<String> now = over(chain, delays);
    return new PictureBlocks(
        blockSizes.stream()
            .map(chain::withBlockSize)
            .filter(rig -> now.containsAll(over(rig, delays)))
            .toList(),
        delays,
        rule);
  }

  /** The paths that their listeners hear too late. */
  private static Set<String> over(Chain chain, PathDelays delays) {
    Map<String, Latency> late = new HashMap<>();
    chain.paths().forEach((name, path) -> late.put(name, delays.of(chain, path).delay()));
    Hearing hearing = Hearing.of(chain, late);
    return chain.paths().values().stream()
        .filter(
            path ->
                chain.limits().get(path.listener()).standing(hearing.judged(path).ms())
                    == Standing.OVER)
        .map(ChainPath::name)
        .collect(Collectors.toSet());
  }

  /**
   * The best of them for a path. Of two that are equally good it is the one where the sound is
   * early, since only that can be put right by a delay. Empty for a path without a picture, and
   * where the block size changes nothing.
   */
  public Optional<PictureBlock> closest(String path) {
    List<PictureBlock> candidates = rigs.stream().flatMap(rig -> at(rig, path).stream()).toList();
    long different =
        candidates.stream().mapToDouble(c -> c.match().soundEarly().samples()).distinct().count();
    return different < 2
        ? Optional.empty()
        : candidates.stream()
            .min(
                Comparator.comparingDouble((PictureBlock c) -> c.match().apartMs())
                    .thenComparing(c -> -c.match().soundEarly().samples()));
  }

  private Optional<PictureBlock> at(Chain rig, String name) {
    ChainPath path = rig.path(name);
    return path.picture().isEmpty()
        ? Optional.empty()
        : PictureMatch.of(rig, path, delays.of(rig, path).delay(), rule)
            .map(match -> new PictureBlock(rig.blockSize(), match));
  }
}
