package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.SentLevel;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What the programme explains of a value. Compressors, limiters and automatic levels turn down what
 * gets louder, by no more than it got louder by: else it would come out softer. Whether they go by
 * its mean, its loudest moments or its peaks nobody knows, so the measure counts that changed most.
 * So much explained the levels of a compressor of 3 to 1 to 1 dB for all but 419 of 2.49 million
 * pairs of windows of the same 10 minutes (16 scenes of {@code WatchQuietTest}, other seeds); the
 * mean alone for all but 13,647, mean and peaks for all but 3,538.
 */
final class Programme {
  private Programme() {}

  /**
   * What is left of a change of level in dB.
   *
   * @param before the values that it starts from, at least one
   * @param after the values that it leads to, at least one
   */
  static double unexplained(double change, List<Value> before, List<Value> after) {
    Optional<SentLevel> then = mean(before);
    if (then.isEmpty()) {
      return change;
    }
    double explained = explains(then.get(), mean(after).orElseThrow(), change < 0);
    return Math.signum(change) * Math.max(0, Math.abs(change) - explained);
  }

  /** By how much a level may fall, or rise, since another programme is played, in dB. */
  private static double explains(SentLevel then, SentLevel now, boolean falls) {
    return Math.max(0, falls ? now.louderBy(then) : then.louderBy(now));
  }

  /**
   * The values whose programme explains least of a fall, or a rise, to some others, and of those
   * that explain as little the ones whose programme is most like theirs; in the order of time.
   * Where values don't go by the programme, all.
   */
  static List<Value> explainingLeast(
      List<Value> values, List<Value> after, boolean falls, int count) {
    return first(
        values,
        after,
        count,
        now ->
            Comparator.<Value>comparingDouble(value -> explains(sent(value), now, falls))
                .thenComparingDouble(value -> sent(value).awayFrom(now)));
  }

  /** The values whose programme is most like that of some others. */
  static List<Value> nearest(List<Value> values, List<Value> after, int count) {
    return first(
        values, after, count, now -> Comparator.comparingDouble(v -> sent(v).awayFrom(now)));
  }

  private static List<Value> first(
      List<Value> values,
      List<Value> after,
      int count,
      Function<SentLevel, Comparator<Value>> order) {
    Optional<SentLevel> now = mean(after);
    if (now.isEmpty()) {
      return values;
    }
    List<Value> first = values.stream().sorted(order.apply(now.get())).limit(count).toList();
    return values.stream().filter(first::contains).toList();
  }

  /** How unlike the programme of some values is to that of others, in dB; 0 where it is unknown. */
  static double apart(List<Value> values, List<Value> others) {
    return mean(values).map(sent -> sent.awayFrom(mean(others).orElseThrow())).orElse(0.0);
  }

  private static SentLevel sent(Value value) {
    return value.sent().orElseThrow();
  }

  private static Optional<SentLevel> mean(List<Value> values) {
    List<SentLevel> sent = values.stream().flatMap(value -> value.sent().stream()).toList();
    return sent.isEmpty() ? Optional.empty() : Optional.of(SentLevel.mean(sent));
  }
}
