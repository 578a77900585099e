package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What a pair costs once the code is warm: its correlation in blocks, the same in one transform of
 * all of it, and the whole estimate, with uncertainty, arrivals, bands and findings.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class CorrelationBenchmark {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int DELAY = 523;
  private static final double MAX_DELAY_SECONDS = 1;

  /** How long the pair is, in seconds. */
  @Param({"5", "60"})
  public int seconds;

  private Signal reference;
  private Signal ret;
  private List<Reading> readings;

  /** Noise, and the same later with a little noise of its own. */
  @Setup
  public void makePair() {
    SplittableRandom random = new SplittableRandom(1);
    double[] sent = random.doubles(RATE.samplesIn(seconds), -0.5, 0.5).toArray();
    double[] back = random.doubles(sent.length, -0.01, 0.01).toArray();
    for (int i = DELAY; i < back.length; i++) {
      back[i] += 0.5 * sent[i - DELAY];
    }
    reference = Signal.of(RATE, sent);
    ret = Signal.of(RATE, back);
    readings = Segments.of(reference, MAX_DELAY_SECONDS).against(ret);
  }

  /** The correlation over the delays that are looked for, in blocks, on all cores. */
  @Benchmark
  public Object inBlocks() {
    return Spectra.of(readings, MAX_DELAY_SECONDS);
  }

  /** The same in one zero-padded transform. */
  @Benchmark
  public Object inOneTransform() {
    int maxLag = RATE.samplesIn(MAX_DELAY_SECONDS);
    int length = reference.length();
    BlockPlan whole = new BlockPlan(RealFft.lengthFor(length + 2 * maxLag), length, maxLag);
    return new Correlator(whole, new RealFft(whole.transform()), 0)
        .add(new Reading(reference, ret), 0, 1);
  }

  /** All that is said of the pair. */
  @Benchmark
  public Object estimate() {
    return new DelayEstimator(MAX_DELAY_SECONDS).estimate(reference, ret);
  }
}
