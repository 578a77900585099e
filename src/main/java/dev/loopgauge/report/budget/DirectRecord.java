package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.plan.Blend;
import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.DirectSound;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;

/** The same sound straight through the air, as documents hold it. */
public record DirectRecord(
    Optional<BigDecimal> directSamples,
    BigDecimal directMs,
    Optional<BigDecimal> pathLaterSamples,
    BigDecimal pathLaterMs,
    Optional<BigDecimal> laterLevelDb,
    Optional<BigDecimal> firstNullHz,
    Optional<BigDecimal> nullSpacingHz,
    Optional<BigDecimal> rippleDb,
    Blend effect,
    String reason) {
  /** Of direct sound beside a path, where there is any. */
  static Optional<DirectRecord> of(Optional<DirectSound> sound) {
    return sound.isPresent() ? Optional.of(of(sound.get())) : Optional.empty();
  }

  private static DirectRecord of(DirectSound sound) {
    Comb comb = sound.overlap().comb();
    return new DirectRecord(
        Optional.of(Written.samples(sound.direct().samples())),
        Written.ms(sound.direct().ms()),
        Optional.of(Written.samples(sound.pathLater().samples())),
        Written.ms(sound.pathLater().ms()),
        Optional.of(Written.db(sound.overlap().laterLevelDb())),
        Written.hz(comb.firstNullHz()),
        Written.hz(comb.nullSpacingHz()),
        Written.db(comb.rippleDb()),
        sound.overlap().effect(),
        sound.overlap().reason());
  }

  /** In words, for a listener. */
  String told(Optional<Listener> listener) {
    boolean house = listener.orElse(null) == Listener.HOUSE;
    String order = pathLaterMs.signum() < 0 ? " earlier: " : " later: ";
    return ("direct sound after " + Numbers.inMs(directMs, 3) + ", ")
        + (house ? "the loudspeakers " : "this path ")
        + (Numbers.inMs(pathLaterMs.abs(), 3) + order)
        + (Combs.effect(effect) + ", " + reason + ".");
  }
}
