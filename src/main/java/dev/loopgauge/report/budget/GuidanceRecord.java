package dev.loopgauge.report.budget;

import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Guidance;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;

/** What players of an instrument found, as documents hold it. */
public record GuidanceRecord(
    Optional<String> instrument,
    BigDecimal goodMs,
    BigDecimal fairMs,
    String rating,
    Optional<String> source) {
  /** Of a path at a delay; empty where no instrument is stated, or nothing is known of it. */
  static Optional<GuidanceRecord> of(ChainPath path, double ms) {
    if (path.instrument().isEmpty()) {
      return Optional.empty();
    }
    Instrument instrument = path.instrument().get();
    Optional<Guidance> known = instrument.guidance(path.listener());
    return known.isPresent() ? Optional.of(of(instrument, known.get(), ms)) : Optional.empty();
  }

  private static GuidanceRecord of(Instrument instrument, Guidance row, double ms) {
    return new GuidanceRecord(
        Optional.of(instrument.label()),
        Written.ms(row.goodMs()),
        Written.ms(row.fairMs()),
        row.rating(ms).label(),
        Optional.of(Guidance.SOURCE));
  }

  /** In words, at a delay. */
  String told(BigDecimal ms) {
    return Numbers.inMs(ms, 3)
        + (" is " + rating)
        + (" for " + instrument.orElse("") + " (good to ")
        + (Numbers.brief(goodMs.doubleValue(), 1) + " ms, fair to ")
        + (Numbers.brief(fairMs.doubleValue(), 1) + " ms; " + source.orElse("") + ").");
  }
}
