package dev.loopgauge.estimate.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.DelayTrial;
import dev.loopgauge.estimate.Rig;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import java.util.function.IntSupplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often delays without a drift are said to drift, whatever their jitter, and how small a drift
 * is told. The table goes to standard output.
 */
@Tag("campaign")
class DriftFalseAlarmsTest {
  private static final int ALL = 200_000;
  private static final double MOST = 0.001;

  /** A part of them in each build, all by {@code -Pconformance}; tracks take longer. */
  private static final int SERIES = Campaign.fullOrSmall(ALL, 40_000);

  private static final int TRACKS = Campaign.fullOrSmall(ALL, 10_000);

  /** Whole measurements take longest. */
  private static final int MEASURED = Campaign.fullOrSmall(200, 20);

  private static final Campaign CAMPAIGN = Campaign.named("drift-false-alarms");

  private static final int[] COUNTS = {3, 4, 5, 8, 20};
  private static final double PERIOD = 72_000;

  /** Jitter as its standard deviation, in those of the noise; a fifth of a sample at most. */
  @ParameterizedTest
  @CsvSource({
    "3, 0", "3, 1", "3, 5", "3, 1000",
    "4, 0", "4, 1", "4, 5", "4, 1000",
    "5, 0", "5, 1", "5, 5", "5, 1000",
    "8, 0", "8, 1", "8, 5", "8, 1000",
    "20, 0", "20, 1", "20, 5", "20, 1000"
  })
  void repeatsThatJitterShowNoDrift(int count, double jitter) {
    double noise = 2e-4;
    SplittableRandom random = random(100L * count + (long) jitter);
    DoubleSupplier normal = () -> noise * Math.hypot(1, jitter) * random.nextGaussian();
    assertFewDrift(count + " repeats, jitter " + jitter, count, noise, normal);
  }

  /** Jitter that is as likely anywhere within a sample. */
  @ParameterizedTest
  @CsvSource({"3", "4", "5", "8", "20"})
  void repeatsThatJitterEvenlyShowNoDrift(int count) {
    SplittableRandom random = random(count);
    assertFewDrift(count + " repeats, even jitter", count, 1e-4, random::nextDouble);
  }

  private static SplittableRandom random(long trial) {
    return new SplittableRandom(CAMPAIGN.seed(trial));
  }

  private static void assertFewDrift(String slice, int count, double noise, DoubleSupplier delay) {
    int told = told(slice, () -> drifting(count, noise, delay));
    assertTrue(told <= mostOf(SERIES), told + " of " + SERIES + " are said to drift");
  }

  private static int told(String slice, IntSupplier count) {
    Optional<List<String>> run = CAMPAIGN.slice(slice, () -> List.of("" + count.getAsInt()));
    Assumptions.assumeTrue(run.isPresent(), "waits for another run");
    return Integer.parseInt(run.get().get(0));
  }

  private static int drifting(int count, double noise, DoubleSupplier delay) {
    double[] times = times(count);
    double[] delays = new double[count];
    int told = 0;
    for (int i = 0; i < SERIES; i++) {
      Arrays.setAll(delays, k -> 600 + delay.getAsDouble());
      told += DelayLine.through(times, delays, noise).drifts() ? 1 : 0;
    }
    return told;
  }

  /** Windows of a track, with jitter in samples; the noise of each window is its own. */
  @ParameterizedTest
  @CsvSource({
    "3, 0", "3, 0.05", "3, 0.2", "3, 2",
    "4, 0", "4, 0.05", "4, 0.2", "4, 2",
    "5, 0", "5, 0.05", "5, 0.2", "5, 2",
    "8, 0", "8, 0.05", "8, 0.2", "8, 2",
    "20, 0", "20, 0.05", "20, 0.2", "20, 2"
  })
  void windowsThatJitterShowNoDrift(int count, double jitter) {
    int told = told(count + " windows, jitter " + jitter, () -> drifting(count, jitter));
    assertTrue(told <= mostOf(TRACKS), told + " of " + TRACKS + " are said to drift");
  }

  private static int drifting(int count, double jitter) {
    SplittableRandom random = random(1000L * count + (long) (100 * jitter));
    int told = 0;
    for (int i = 0; i < TRACKS; i++) {
      told += drifts(track(count, jitter, random)) ? 1 : 0;
    }
    return told;
  }

  /** What a slice may hold by chance at that rate: three standard deviations more. */
  private static double mostOf(int tried) {
    double due = MOST * tried;
    return tried == ALL ? due : due + 3 * Math.sqrt(due);
  }

  private static Track track(int count, double jitter, SplittableRandom random) {
    List<TrackPoint> points = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      double noise = 0.01 * Math.exp(random.nextGaussian());
      double delay = 600 + Math.hypot(noise, jitter) * random.nextGaussian();
      points.add(new TrackPoint(2 * k + 1, new Latency(delay, Rig.RATE), 2 * noise));
    }
    return new TrackLine(2, points).track(0, 0);
  }

  private static boolean drifts(Track track) {
    return track.findings().stream().anyMatch(f -> f.code() == FindingCode.CLOCKS_NOT_LOCKED);
  }

  /** The whole way, with the default three repeats of a sweep of one second. */
  @Test
  void tellsTwentyPpmAtFortyDecibelsInNinetyNineOfAHundred() {
    DelayTrial trial = new DelayTrial(Rig.SWEEP);
    double noise = trial.noise(40, 0.5);
    double perRepeat = 20e-6 * PERIOD;
    int told = 0;
    for (int seed = 0; seed < MEASURED; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double first = random.nextDouble(100, 1000);
      List<Reading> readings = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        Reading reading = trial.reading(first + k * perRepeat, 0.5, noise, random);
        readings.add(new Reading(reading.reference(), reading.ret(), (int) (k * PERIOD)));
      }
      Estimate estimate = new DelayEstimator(0.5).estimate(readings);
      if (estimate.findings().stream().anyMatch(f -> f.code() == FindingCode.CLOCKS_NOT_LOCKED)) {
        ClockDrift drift = ((Estimate.Found) estimate).measurement().clockDrift().orElseThrow();
        assertEquals(20, drift.ppm(), Math.max(0.05, drift.uncertaintyPpm()), "seed " + seed);
        told++;
      }
    }
    assertTrue(told >= 0.99 * MEASURED, told + " of " + MEASURED + " are told");
  }

  /** The drift that 99 % of series show, where there is no jitter: sweeps of 1 s every 1.5 s. */
  @Test
  void tellsSmallerDriftsFromMoreRepeats() {
    double bound = new DelayTrial(Rig.SWEEP).bound(new DelayTrial(Rig.SWEEP).noise(40, 1), 1);
    StringBuilder table =
        new StringBuilder("smallest drift told in 99 %, in ppm, at 40 dB and at 20 dB\n");
    double last = Double.POSITIVE_INFINITY;
    for (int count : COUNTS) {
      double at40 = smallest(count, bound);
      double at20 = smallest(count, 10 * bound);
      table.append("%2d repeats: %8.3f %8.3f%n".formatted(count, at40, at20));
      assertTrue(at40 < last, table::toString);
      last = at40;
    }
    assertTrue(smallest(3, bound) < 20, table::toString);
    System.out.println(table);
  }

  private static double smallest(int count, double noise) {
    double low = 0;
    double high = 1000;
    while (high - low > 0.002 * high) {
      double ppm = (low + high) / 2;
      if (told(count, noise, ppm) >= 0.99) {
        high = ppm;
      } else {
        low = ppm;
      }
    }
    return high;
  }

  private static double told(int count, double noise, double ppm) {
    double[] times = times(count);
    double[] delays = new double[count];
    SplittableRandom random = new SplittableRandom(count);
    int told = 0;
    for (int i = 0; i < 2000; i++) {
      Arrays.setAll(delays, k -> 1e-6 * ppm * times[k] + noise * random.nextGaussian());
      told += DelayLine.through(times, delays, noise).drifts() ? 1 : 0;
    }
    return told / 2000.0;
  }

  private static double[] times(int count) {
    return IntStream.range(0, count).mapToDouble(i -> i * PERIOD).toArray();
  }
}
