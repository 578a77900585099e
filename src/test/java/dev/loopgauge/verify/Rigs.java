package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/** Invented rigs and readings of them. */
final class Rigs {
  static final SampleRate RATE = new SampleRate(48_000);

  private Rigs() {}

  static Chain parsed(String yaml) {
    try {
      return ChainParser.parse(yaml, "rig.yaml");
    } catch (ChainFormatException e) {
      throw new AssertionError(e.getMessage() + " (" + e.hint() + ")", e);
    }
  }

  /** A trustworthy reading, by reference channel. */
  static Measurement measured(double samples, double uncertainty, SampleRate rate) {
    return measured(samples, uncertainty, rate, List.of());
  }

  /** The same with what else arrived. */
  static Measurement measured(
      double samples, double uncertainty, SampleRate rate, List<Arrival> arrivals) {
    return new Measurement(
        new Latency(samples, rate),
        uncertainty,
        Optional.empty(),
        Optional.empty(),
        Polarity.NORMAL,
        0,
        0.1,
        60,
        Method.REFERENCED,
        3,
        Optional.empty(),
        arrivals,
        List.of(),
        List.of(),
        Optional.empty(),
        false);
  }
}
