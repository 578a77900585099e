package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.signal.Latency;
import java.util.Optional;

/**
 * A path against the same sound that comes straight through the air, as in the front rows.
 *
 * @param direct how long the direct sound takes
 * @param pathLater how much later the path is; negative when it comes first
 * @param overlap the two as they are heard, at equal levels
 */
public record DirectSound(Latency direct, Latency pathLater, Overlap overlap) {
  /**
   * The direct sound beside a path of the chain, where its distance is given. Of a path that ends
   * in a loudspeaker its {@linkplain PathBudget#seats seats} tell it.
   */
  public static Optional<DirectSound> beside(Chain chain, PathBudget path) {
    ChainPath written = chain.path(path.name());
    if (written.direct().isEmpty() || written.loudspeaker().isPresent()) {
      return Optional.empty();
    }
    double samples = written.direct().get().samples(chain.conditions());
    return Optional.of(of(new Latency(samples, chain.rate()), path));
  }

  private static DirectSound of(Latency direct, PathBudget path) {
    Latency later = path.delay().minus(direct);
    Latency tolerance = new Latency(path.toleranceSamples(), path.rate());
    return new DirectSound(direct, later, new Overlap(Math.abs(later.ms()), tolerance.ms(), 0));
  }
}
