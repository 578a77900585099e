package dev.loopgauge.report.patch;

import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.report.form.Sparse;
import java.util.Optional;
import java.util.Set;

/**
 * A line of the patch sheet.
 *
 * @param path the path's name
 * @param listener who hears it
 * @param send where it is fed
 * @param ret where it comes back
 * @param reference what it is measured against
 * @param standing {@code patched}, {@code elsewhere}, {@code not-heard} or {@code two-sends}; empty
 *     while nobody has listened
 */
public record SheetRecord(
    String path,
    String listener,
    int send,
    int ret,
    Optional<PairRecord> reference,
    Optional<String> standing)
    implements Sparse {
  static final String PATCHED = "patched";
  static final String ELSEWHERE = "elsewhere";
  static final String NOT_HEARD = "not-heard";
  static final String TWO_SENDS = "two-sends";

  /** A line that nobody has ticked off yet. */
  public static SheetRecord of(ChainPath path, ChannelPair pair, Optional<ChannelPair> reference) {
    return new SheetRecord(
        path.name(),
        path.listener().label(),
        pair.send(),
        pair.ret(),
        reference.map(PairRecord::of),
        Optional.empty());
  }

  SheetRecord ticked(PatchMap map) {
    return new SheetRecord(path, listener, send, ret, reference, Optional.of(standing(map)));
  }

  private String standing(PatchMap map) {
    if (map.crossedReturns().contains(ret)) {
      return TWO_SENDS;
    }
    if (map.joins(new ChannelPair(send, ret))) {
      return PATCHED;
    }
    return map.hearing(send).isEmpty() ? NOT_HEARD : ELSEWHERE;
  }

  PairRecord pair() {
    return new PairRecord(send, ret);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("standing");
  }
}
