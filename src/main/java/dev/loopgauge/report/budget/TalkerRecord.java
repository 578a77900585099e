package dev.loopgauge.report.budget;

import dev.loopgauge.plan.OwnVoice;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.signal.Latency;
import java.math.BigDecimal;
import java.util.Optional;

/** A voice that comes back to its own talker, as documents hold it. */
public record TalkerRecord(
    Optional<BigDecimal> roundTripSamples,
    BigDecimal roundTripMs,
    OwnVoice ownVoice,
    Optional<String> source) {
  /** Of a round trip. */
  static TalkerRecord of(Latency roundTrip) {
    return new TalkerRecord(
        Optional.of(Written.samples(roundTrip.samples())),
        Written.ms(roundTrip.ms()),
        OwnVoice.at(roundTrip.ms()),
        Optional.of(OwnVoice.SOURCE));
  }

  /** In words. */
  String told() {
    return "comes back to its own talker, a round trip of "
        + (Numbers.inMs(roundTripMs, 3) + ": " + ownVoice.words())
        + (source.map(name -> ", " + name).orElse("") + ".")
        + (ownVoice == OwnVoice.UNNOTICED ? "" : " Keep the own voice out of it (mix-minus).");
  }
}
