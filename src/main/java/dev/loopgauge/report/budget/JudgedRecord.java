package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Judged;
import dev.loopgauge.chain.SeatArrival;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * What a listener's limits are applied to, as documents hold it.
 *
 * @param ms how late it is, in ms
 * @param against what that is counted from, in words: {@code tower at far}
 * @param earlierPath the path that is heard first there, where it is counted from one; that one
 *     lacks delay when the limit is passed
 */
public record JudgedRecord(BigDecimal ms, String against, Optional<String> earlierPath)
    implements Sparse {
  /** Of a delay that was judged. */
  static JudgedRecord of(Judged judged) {
    return new JudgedRecord(Written.ms(judged.ms()), judged.counted(), judged.earlier());
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("earlierPath");
  }

  /** In words: {@code 4.2 ms after direct sound at row-a}. */
  String told() {
    return Numbers.inMs(ms, 1) + " after " + against;
  }

  /** What is heard first, in brackets, where a path or the direct sound is; else nothing. */
  String because() {
    if (earlierPath.isPresent()) {
      return " (" + told() + ": " + earlierPath.get() + " lacks delay)";
    }
    return against.startsWith(SeatArrival.DIRECT_SOUND) ? " (" + told() + ")" : "";
  }
}
