package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Latency;
import java.util.List;
import org.junit.jupiter.api.Test;

class ChangeSearchTest {
  private static final Chain CHAIN =
      Rigs.parsed(
          """
          sample-rate: 48000
          block-size: 64
          stages:
            host: { blocks: 2, tolerance-samples: 3 }
            limiter: { samples: 240, tolerance-samples: 3 }
            fixed: { samples: 219 }
          paths:
            vocal: { listener: house, stages: [host, limiter, fixed] }
          """);

  private static List<String> causes(double later, KnownFacts facts) {
    return ChangeSearch.likely(
            CHAIN, CHAIN.path("vocal"), new Latency(later, Rigs.RATE), 0.1, facts)
        .stream()
        .map(Explanation::cause)
        .toList();
  }

  @Test
  void whatFitsByItsFiguresIsNamed() {
    assertEquals(List.of("stage-absent"), causes(-240, KnownFacts.NONE));
  }

  /** 3 + 3 samples are tolerances, half a sample rounding, 0.1 the uncertainty. */
  @Test
  void noCauseLeavesMoreThanUncertaintyAndTolerancesAllow() {
    assertTrue(causes(-219 - 6.5, KnownFacts.NONE).contains("stage-absent"));
    assertTrue(!causes(-219 + 6.7, KnownFacts.NONE).contains("stage-absent"));
  }

  @Test
  void whatTheServerRefutesIsNotNamed() {
    assertTrue(causes(128, KnownFacts.NONE).contains("block-size"));
    assertTrue(!causes(128, KnownFacts.of(64, Rigs.RATE)).contains("block-size"));
  }
}
