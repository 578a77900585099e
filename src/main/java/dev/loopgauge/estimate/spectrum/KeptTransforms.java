package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.Samples;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;

/**
 * What references come to in a correlation, kept for the next return that is read against them: two
 * thirds of the work. Safe to share between threads; nobody changes what is kept.
 */
public final class KeptTransforms {
  /** How many numbers are kept at most: 128 MiB, enough for two minutes and delays of a second. */
  private static final long MOST = 1 << 24;

  private final Transforms transforms = new Transforms();
  private final AtomicLong room = new AtomicLong(MOST);
  private final Map<BlockKey, double[]> blocks = new ConcurrentHashMap<>();
  private final Map<AutoKey, CrossSpectrum> autos = new ConcurrentHashMap<>();

  private record BlockKey(Samples reference, int block, BlockPlan plan) {}

  private record AutoKey(List<Samples> references, BlockPlan plan) {}

  /** What the transforms are made with. */
  Transforms transforms() {
    return transforms;
  }

  /** A block's transform, from {@code source} if it isn't kept. */
  double[] block(Samples reference, int block, BlockPlan plan, Supplier<double[]> source) {
    BlockKey key = new BlockKey(reference, block, plan);
    double[] known = blocks.get(key);
    if (known != null) {
      return known;
    }
    double[] made = source.get();
    if (room.addAndGet(-made.length) >= 0) {
      blocks.put(key, made);
    }
    return made;
  }

  /** The references' correlation with themselves, if it is kept. */
  Optional<CrossSpectrum> auto(List<Reading> readings, BlockPlan plan) {
    return Optional.ofNullable(autos.get(key(readings, plan)));
  }

  /** Keeps the references' correlation with themselves. */
  void keepAuto(List<Reading> readings, BlockPlan plan, CrossSpectrum auto) {
    autos.put(key(readings, plan), auto);
  }

  private static AutoKey key(List<Reading> readings, BlockPlan plan) {
    return new AutoKey(readings.stream().map(Reading::reference).toList(), plan);
  }
}
