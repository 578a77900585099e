package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The work of correlating readings, share by share of their blocks.
 *
 * @param kept where the references' transforms are kept
 * @param withAuto whether the references' correlation with themselves isn't known yet
 */
record Correlating(
    List<Reading> readings,
    BlockPlan plan,
    RealFft fft,
    Optional<KeptTransforms> kept,
    boolean withAuto)
    implements Function<List<BlockRange>, Correlating.Part> {
  /** What lies below is an offset or a drift of a converter, not sound, in Hz. */
  private static final double LOWEST_HZ = 10;

  /** What some of the blocks come to: a correlation for each range of them. */
  record Part(List<BlockRange> ranges, List<CrossSpectrum> crosses, Optional<CrossSpectrum> auto) {}

  /** All of it. */
  List<Part> parts() {
    return InParallel.map(BlockRange.shares(readings, plan), this);
  }

  @Override
  public Part apply(List<BlockRange> ranges) {
    int lowest = lowestBin(readings.get(0).rate(), plan);
    try (Correlator correlator = new Correlator(plan, fft, lowest, kept, withAuto)) {
      List<CrossSpectrum> crosses = new ArrayList<>();
      for (BlockRange range : ranges) {
        Reading reading = readings.get(range.reading());
        crosses.add(correlator.add(reading, range.from(), range.to()));
      }
      return new Part(ranges, crosses, correlator.auto());
    }
  }

  private static int lowestBin(SampleRate rate, BlockPlan plan) {
    return Math.max(1, (int) Math.ceil(LOWEST_HZ * plan.transform() / rate.hertz()));
  }

  /** The correlation of each reading. */
  static List<CrossSpectrum> each(List<Part> parts, int readings) {
    List<List<CrossSpectrum>> of = new ArrayList<>();
    for (int i = 0; i < readings; i++) {
      of.add(new ArrayList<>());
    }
    for (Part part : parts) {
      for (int i = 0; i < part.ranges().size(); i++) {
        of.get(part.ranges().get(i).reading()).add(part.crosses().get(i));
      }
    }
    List<CrossSpectrum> sums = new ArrayList<>();
    for (List<CrossSpectrum> crosses : of) {
      sums.add(CrossSpectrum.sum(crosses));
    }
    return sums;
  }

  /** The references' correlation with themselves. */
  static CrossSpectrum auto(List<Part> parts) {
    List<CrossSpectrum> autos = new ArrayList<>();
    for (Part part : parts) {
      autos.add(part.auto().orElseThrow());
    }
    return CrossSpectrum.sum(autos);
  }
}
