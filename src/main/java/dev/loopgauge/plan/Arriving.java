package dev.loopgauge.plan;

import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * A path of a mix as it arrives, predicted or measured.
 *
 * @param feeding the path
 * @param arrival what is predicted of it in the mix
 * @param measured its loop as measured
 */
record Arriving(Feeding feeding, MixArrival arrival, Optional<MeasuredLoop> measured) {
  /** Loops are stated in whole samples, and half of one more is left to rounding. */
  private static final double ALLOWED_SAMPLES = 1;

  String name() {
    return feeding.path().name();
  }

  SampleRate rate() {
    return arrival.path().rate();
  }

  /** How far behind the others it is meant to arrive. */
  Latency offset() {
    return Latency.ofMs(feeding.entry().offsetMs(), rate());
  }

  /**
   * How late it is in the mix, from its source through all its stages. A reading that is as its
   * budget says was made without what the desk adds in the mix, so that is added to it too.
   */
  SourcedDelay delay() {
    return measured
        .map(loop -> new SourcedDelay(around(loop), DelaySource.MEASURED))
        .orElseGet(() -> new SourcedDelay(arrival.delay(), DelaySource.PREDICTED));
  }

  private Latency around(MeasuredLoop loop) {
    PathBudget budget = arrival.path();
    Latency whole = read(loop).plus(budget.delay().minus(budget.loop()));
    double off = read(loop).minus(budget.loop()).samples();
    boolean without = Math.abs(off) < Math.abs(off - arrival.added().samples());
    return without ? whole.plus(arrival.added()) : whole;
  }

  private Latency read(MeasuredLoop loop) {
    return Latency.ofSeconds(loop.delay().seconds(), rate());
  }

  /** Whether its reading is neither what its budget says nor that with what the desk adds. */
  boolean isOutsideBudget() {
    return measured.filter(this::isOutside).isPresent();
  }

  private boolean isOutside(MeasuredLoop loop) {
    double off = read(loop).minus(arrival.path().loop()).samples();
    double nearest =
        DoubleStream.of(0, arrival.added().samples(), arrival.addedIfAll().samples())
            .map(added -> Math.abs(off - added))
            .min()
            .orElseThrow();
    double uncertainty = loop.uncertaintySamples() * rate().hertz() / loop.delay().rate().hertz();
    return nearest > arrival.path().loopToleranceSamples() + uncertainty + ALLOWED_SAMPLES;
  }

  /** Where it is heard together with another; none where neither has a loudspeaker. */
  Optional<String> placeWith(Arriving other) {
    List<String> shared = feeding.positionsWith(other.feeding());
    return shared.stream().findFirst();
  }

  /** Whether it is heard where another is. */
  boolean isHeardWith(Arriving other) {
    return feeding.air().isEmpty() ? other.feeding().air().isEmpty() : placeWith(other).isPresent();
  }

  /** How much later than another it is heard, less than it is meant to be. */
  Latency behind(Arriving other) {
    Optional<String> place = placeWith(other);
    return at(place).minus(offset()).minus(other.at(place).minus(other.offset()));
  }

  private Latency at(Optional<String> place) {
    Latency own = delay().delay();
    return place.map(seat -> own.plus(feeding.air().get(seat))).orElse(own);
  }
}
