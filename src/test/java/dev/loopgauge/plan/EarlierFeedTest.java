package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.chain.Standing;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class EarlierFeedTest {
  private static Optional<EarlierFeed> of(Chain chain, String path) {
    return EarlierFeed.of(chain, Harbour.budget(chain, path));
  }

  /** 559 samples = 11.65 ms is over 5 ms; without the host's 488 it is 71 samples = 1.48 ms. */
  @Test
  void inEarPathThatIsOverIsTakenFromBeforeTheHost() {
    EarlierFeed feed = of(Harbour.chain(), "band-in-ear").orElseThrow();
    assertEquals(559, feed.path().delay().samples(), 1e-9);
    assertEquals(71, feed.delay().samples(), 1e-9);
    assertEquals(Standing.WITHIN, feed.standing());
    assertEquals(
        List.of("host-blocks", "host-fixed", "limiter"),
        feed.spared().stream().map(StageDelay::name).toList());
  }

  /** 71 - 48 + 300 samples = 6.73 ms are still over 5 ms. */
  @Test
  void earlierFeedMayStillBeOver() {
    Chain chain = Harbour.with("{ ms: 1, tolerance-ms: 0.05 }", "{ samples: 300 }");
    assertEquals(Standing.OVER, of(chain, "band-in-ear").orElseThrow().standing());
  }

  @Test
  void otherPathsNeedNoAdvice() {
    assertEquals(Optional.empty(), of(Harbour.chain(), "vocal-in-ear"));
    assertEquals(Optional.empty(), of(Harbour.chain(), "vocal-house"));
    assertEquals(Optional.empty(), of(Harbour.with("ms: 1,", "ms: 9,"), "vocal-in-ear"));
  }
}
