package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The correlations of some readings of one path, each by itself and all together.
 *
 * @param readings the readings, all at one rate
 * @param searchLag how far a delay is looked for either way, in samples
 * @param each the correlation of each reading
 * @param cross the sum of them
 * @param auto the sum of the references' correlations with themselves
 */
record Spectra(
    List<Reading> readings,
    int searchLag,
    List<CrossSpectrum> each,
    CrossSpectrum cross,
    CrossSpectrum auto) {
  /** What lies below is an offset or a drift of a converter, not sound, in Hz. */
  private static final double LOWEST_HZ = 10;

  /** How far a fitted filter reaches either way, as a part of a short block. */
  private static final int REACH_PER_BLOCK = 16;

  /** Correlates some readings. */
  static Spectra of(List<Reading> readings, double maxDelaySeconds) {
    SampleRate rate = readings.get(0).rate();
    int searchLag = rate.samplesIn(maxDelaySeconds);
    int shortBlock = ShortBlocks.lengthAt(rate);
    int margin = Math.max(searchLag, shortBlock) + 2 * reach(rate);
    BlockPlan plan = BlockPlan.of(longestReference(readings), margin, shortBlock);
    List<Part> parts = parts(readings, plan);
    List<CrossSpectrum> each = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      int reading = i;
      each.add(CrossSpectrum.sum(parts.stream().flatMap(p -> p.of(reading).stream()).toList()));
    }
    return new Spectra(
        List.copyOf(readings),
        searchLag,
        each,
        CrossSpectrum.sum(each),
        CrossSpectrum.sum(parts.stream().map(Part::auto).toList()));
  }

  /** What some of the blocks come to: a correlation for each range of them. */
  private record Part(List<BlockRange> ranges, List<CrossSpectrum> crosses, CrossSpectrum auto) {
    static Part of(List<BlockRange> ranges, List<Reading> readings, Correlator correlator) {
      List<CrossSpectrum> crosses = new ArrayList<>();
      for (BlockRange range : ranges) {
        Reading reading = readings.get(range.reading());
        crosses.add(correlator.add(reading, range.from(), range.to()));
      }
      return new Part(ranges, crosses, correlator.auto());
    }

    List<CrossSpectrum> of(int reading) {
      return IntStream.range(0, ranges.size())
          .filter(i -> ranges.get(i).reading() == reading)
          .mapToObj(crosses::get)
          .toList();
    }
  }

  private static List<Part> parts(List<Reading> readings, BlockPlan plan) {
    RealFft fft = new RealFft(plan.transform());
    int rate = readings.get(0).rate().hertz();
    int lowestBin = Math.max(1, (int) Math.ceil(LOWEST_HZ * plan.transform() / rate));
    return BlockRange.shares(readings, plan).parallelStream()
        .map(ranges -> Part.of(ranges, readings, new Correlator(plan, fft, lowestBin)))
        .toList();
  }

  /** The rate of the readings. */
  SampleRate rate() {
    return readings.get(0).rate();
  }

  /** How far a delay is looked for either way, in seconds. */
  double searchSeconds() {
    return (double) searchLag / rate().hertz();
  }

  /** How many samples the longest reference has. */
  int longestReference() {
    return longestReference(readings);
  }

  private static int longestReference(List<Reading> readings) {
    return readings.stream().mapToInt(r -> r.reference().length()).max().orElseThrow();
  }

  /** How far a fitted filter reaches either way, in samples. */
  int reach() {
    return reach(rate());
  }

  private static int reach(SampleRate rate) {
    return ShortBlocks.lengthAt(rate) / REACH_PER_BLOCK;
  }

  /** The energy of all references. */
  double referenceEnergy() {
    return auto.at(0).value();
  }

  /** A correlation at the whole lags that are searched; index searchLag is lag 0. */
  double[] searched(CrossSpectrum correlation) {
    return correlation.lagsFrom(-searchLag, 2 * searchLag + 1);
  }

  /** The strongest copy in a correlation. */
  Copy strongest(CrossSpectrum correlation) {
    int best = PeakSearch.strongest(searched(correlation));
    return copy(PeakSearch.refine(correlation, best - searchLag));
  }

  /** The copy that a point of a correlation of all readings stands for. */
  Copy copy(CrossSpectrum.Point point) {
    return new Copy(point.lag(), point.value() / referenceEnergy());
  }
}
