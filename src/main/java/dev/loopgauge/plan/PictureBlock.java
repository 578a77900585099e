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
 * The block size that brings sound closest to its picture without any delay added.
 *
 * @param blockSize the block size, in samples
 * @param match what remains at it
 */
public record PictureBlock(int blockSize, PictureMatch match) {
  /**
   * The best of some block sizes for a path, of those at which no other limit is passed that holds
   * now. Of two that are equally good it is the one where the sound is early, since only that can
   * be put right by a delay. Empty for a path without a picture, and where the block size changes
   * nothing.
   */
  public static Optional<PictureBlock> closest(
      Chain chain, ChainPath path, PathDelays delays, PictureRule rule, List<Integer> blockSizes) {
    List<PictureBlock> candidates =
        blockSizes.stream()
            .filter(size -> breaksNothing(chain, size, delays))
            .flatMap(size -> at(chain.withBlockSize(size), path, delays, rule).stream())
            .toList();
    long different =
        candidates.stream().mapToDouble(c -> c.match().soundEarly().samples()).distinct().count();
    return different < 2
        ? Optional.empty()
        : candidates.stream()
            .min(
                Comparator.comparingDouble((PictureBlock c) -> c.match().apartMs())
                    .thenComparing(c -> -c.match().soundEarly().samples()));
  }

  private static boolean breaksNothing(Chain chain, int blockSize, PathDelays delays) {
    return over(chain, delays).containsAll(over(chain.withBlockSize(blockSize), delays));
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

  private static Optional<PictureBlock> at(
      Chain chain, ChainPath path, PathDelays delays, PictureRule rule) {
    return PictureMatch.of(chain, path, delays.of(chain, path).delay(), rule)
        .map(match -> new PictureBlock(chain.blockSize(), match));
  }
}
