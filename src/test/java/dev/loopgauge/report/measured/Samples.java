package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Passband;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.estimate.result.Response;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.Explanation;
import dev.loopgauge.verify.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Results made by hand. */
final class Samples {
  static final SampleRate RATE = new SampleRate(48_000);

  private Samples() {}

  static Measurement measurement(Method method) {
    return measurement(method, flat(), List.of(arrival(723.0184, -12.04)));
  }

  private static Optional<PureDelay> flat() {
    return Optional.of(new PureDelay(723.0184, 0.036));
  }

  /** Of a path whose filter makes its delay another than the pure one. */
  static Measurement pure(Method method) {
    PureDelay pure = new PureDelay(720.5, 0.05);
    return measurement(method, Optional.of(pure), List.of(arrival(723.0184, -12.04)));
  }

  private static Arrival arrival(double delaySamples, double levelDb) {
    return new Arrival(delaySamples, levelDb, Polarity.NORMAL);
  }

  private static Measurement measurement(
      Method method, Optional<PureDelay> pure, List<Arrival> arrivals) {
    return new Measurement(
        new Latency(723.0184, RATE),
        0.036,
        pure,
        Optional.of(new Passband(20, 20_000)),
        Polarity.NORMAL,
        -12.04,
        0.012,
        61.2,
        method,
        3,
        Optional.of(new ClockDrift(0.02, 0.01)),
        arrivals,
        List.of(),
        List.of(),
        Optional.of(new Response(700, 8, List.of(-80.0, -61.27, 0.0, -80.0))),
        false);
  }

  static Estimate found(Method method) {
    return new Estimate.Found(measurement(method), List.of());
  }

  /** A reading with an arrival of each level, the measured one first. */
  static Estimate withArrivals(double... levelsDb) {
    List<Arrival> arrivals = new ArrayList<>();
    for (double levelDb : levelsDb) {
      arrivals.add(arrival(723.0184 + 100 * arrivals.size(), levelDb));
    }
    return new Estimate.Found(measurement(Method.REFERENCED, flat(), arrivals), List.of());
  }

  static Estimate refused() {
    return new Estimate.Refused(
        List.of(
            new Finding(FindingCode.CLIPPED, false, "return 2 clips", "turn the input gain down"),
            new Finding(
                FindingCode.NO_RETURN,
                true,
                "return 2 hears no sweep (it is 6 dB below its own noise)",
                "is return 2 the right channel? `loopgauge patch` finds it")));
  }

  static Comparison comparison(double predicted, Verdict verdict, OptionalInt wholeBlocks) {
    return new Comparison(
        "vocal-house",
        new Latency(predicted, RATE),
        3,
        1,
        new Latency(723.0184 - predicted, RATE),
        verdict,
        wholeBlocks,
        wholeBlocks.isEmpty()
            ? List.of()
            : List.of(
                new Explanation(
                    "block-size",
                    "the host runs at a block of 128 samples, not 64: check its settings",
                    723,
                    0.0184)),
        Optional.empty(),
        Optional.empty());
  }
}
