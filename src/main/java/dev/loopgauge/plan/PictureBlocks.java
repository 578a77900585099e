package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Hearing;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
    List<Chain> rigs = new ArrayList<>();
    if (hasPicture(chain)) {
      Set<String> now = over(chain, delays);
      for (int blockSize : blockSizes) {
        Chain rig = chain.withBlockSize(blockSize);
        if (now.containsAll(over(rig, delays))) {
          rigs.add(rig);
        }
      }
    }
    return new PictureBlocks(rigs, delays, rule);
  }

  private static boolean hasPicture(Chain chain) {
    for (ChainPath path : chain.paths().values()) {
      if (path.picture().isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** The paths that their listeners hear too late. */
  private static Set<String> over(Chain chain, PathDelays delays) {
    Map<String, Latency> late = new HashMap<>();
    for (ChainPath path : chain.paths().values()) {
      late.put(path.name(), delays.of(chain, path).delay());
    }
    Hearing hearing = Hearing.of(chain, late);
    Set<String> over = new HashSet<>();
    for (ChainPath path : chain.paths().values()) {
      double ms = hearing.judged(path).ms();
      if (chain.limits().get(path.listener()).standing(ms) == Standing.OVER) {
        over.add(path.name());
      }
    }
    return over;
  }

  /**
   * The best of them for a path. Of two that are equally good it is the one where the sound is
   * early, since only that can be put right by a delay. Empty for a path without a picture, and
   * where the block size changes nothing.
   */
  public Optional<PictureBlock> closest(String path) {
    Set<Double> early = new HashSet<>();
    Optional<PictureBlock> best = Optional.empty();
    for (Chain rig : rigs) {
      Optional<PictureMatch> match = at(rig, rig.path(path));
      if (match.isPresent()) {
        early.add(match.get().soundEarly().samples());
        best = better(best, new PictureBlock(rig.blockSize(), match.get()));
      }
    }
    return early.size() < 2 ? Optional.empty() : best;
  }

  private Optional<PictureMatch> at(Chain rig, ChainPath path) {
    return path.picture().isEmpty()
        ? Optional.empty()
        : PictureMatch.of(rig, path, delays.of(rig, path).delay(), rule);
  }

  private static Optional<PictureBlock> better(Optional<PictureBlock> best, PictureBlock other) {
    if (best.isEmpty()) {
      return Optional.of(other);
    }
    PictureMatch known = best.get().match();
    int nearer = Double.compare(other.match().apartMs(), known.apartMs());
    boolean earlier = other.match().soundEarly().samples() > known.soundEarly().samples();
    return nearer < 0 || (nearer == 0 && earlier) ? Optional.of(other) : best;
  }
}
