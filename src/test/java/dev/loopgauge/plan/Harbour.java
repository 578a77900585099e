package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.PathBudget;
import java.util.List;

/** An invented theatre, whose listeners and mixes tests look at. */
final class Harbour {
  /**
   * At 48 kHz: vocal-in-ear 12 + 48 + 11 = 71 samples; vocal-house the same and 2 * 64 + 120 + 240
   * = 488 of the host, 559 samples = 11.646 ms.
   */
  static final String YAML =
      """
      chain: Harbour Theatre
      sample-rate: 48000
      block-size: 64
      stages:
        box-in:      { samples: 12, tolerance-samples: 1 }
        console:     { ms: 1, tolerance-ms: 0.05 }
        host-blocks: { blocks: 2 }
        host-fixed:  { samples: 120, tolerance-samples: 2 }
        limiter:     { samples: 240, reported-by: host }
        box-out:     { samples: 11 }
      paths:
        vocal-house:  { listener: house, stages: [box-in, console, host-blocks, host-fixed, limiter, box-out] }
        vocal-in-ear: { listener: in-ear, stages: [box-in, console, box-out] }
        vocal-stream: { listener: stream, stages: [box-in, console, host-blocks] }
        band-in-ear:  { listener: in-ear, stages: [box-in, console, host-blocks, host-fixed, limiter, box-out] }
      mixes:
        front: [vocal-house, vocal-in-ear]
      """;

  private Harbour() {}

  static Chain chain() {
    return Yaml.chain(YAML);
  }

  /** The theatre with each first text replaced by the second that follows it. */
  static Chain with(String... replacements) {
    String yaml = YAML;
    for (int i = 0; i < replacements.length; i += 2) {
      if (!yaml.contains(replacements[i])) {
        throw new AssertionError("nothing to replace: " + replacements[i]);
      }
      yaml = yaml.replace(replacements[i], replacements[i + 1]);
    }
    return Yaml.chain(yaml);
  }

  static PathBudget budget(Chain chain, String path) {
    return ChainBudget.of(chain, chain.path(path));
  }

  static List<PathBudget> budgets(Chain chain) {
    return chain.paths().values().stream().map(path -> ChainBudget.of(chain, path)).toList();
  }

  static MixBudget mix(Chain chain) {
    return MixBudget.of(chain, chain.mixes().values().iterator().next());
  }
}
