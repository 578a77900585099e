package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PathDelaysTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /** 100 + 2 x 64 samples by cable, then 10 m of air at 20 C: 29.1375 ms (derived). */
  private static final Chain CHAIN =
      Yaml.chain(
          """
          sample-rate: 48000
          block-size: 64
          stages:
            desk: { samples: 100 }
            host: { blocks: 2 }
            throw: { metres: 10 }
          paths:
            wedge: { listener: wedge, stages: [desk, host, throw] }
          """);

  private static final double AIR = 29.1375 * 48;

  private static SourcedDelay wedge(PathDelays delays, Chain chain) {
    return delays.of(chain, chain.path("wedge"));
  }

  @Test
  void withoutAMeasurementTheChainFileIsBelieved() {
    SourcedDelay wedge = wedge(PathDelays.measured(Map.of()), CHAIN);
    assertEquals(228 + AIR, wedge.delay().samples(), 0.01);
    assertEquals(DelaySource.PREDICTED, wedge.source());
  }

  @Test
  void measurementCoversTheLoopAndAirIsAdded() {
    Latency measured = new Latency(291.5, RATE);
    SourcedDelay wedge = wedge(PathDelays.measured(Map.of("wedge", measured)), CHAIN);
    assertEquals(291.5 + AIR, wedge.delay().samples(), 0.01);
    assertEquals(DelaySource.MEASURED, wedge.source());
  }

  @Test
  void measurementAtAnotherRateKeepsItsTime() {
    Latency measured = new Latency(583, new SampleRate(96_000));
    SourcedDelay wedge = wedge(PathDelays.measured(Map.of("wedge", measured)), CHAIN);
    assertEquals(291.5 + AIR, wedge.delay().samples(), 0.01);
  }

  @Test
  void fitFollowsTheBlockSize() {
    PathDelays fitted = PathDelays.fitted(Map.of("wedge", new BlockFit(RATE, 3, 50)));
    assertEquals(3 * 64 + 50 + AIR, wedge(fitted, CHAIN).delay().samples(), 0.01);
    SourcedDelay larger = wedge(fitted, CHAIN.withBlockSize(256));
    assertEquals(3 * 256 + 50 + AIR, larger.delay().samples(), 0.01);
    assertEquals(DelaySource.MEASURED, larger.source());
  }

  @Test
  void fitSaysNothingOfAnotherRate() {
    PathDelays fitted = PathDelays.fitted(Map.of("wedge", new BlockFit(RATE, 3, 50)));
    SourcedDelay wedge = wedge(fitted, CHAIN.withSampleRate(new SampleRate(96_000)));
    assertEquals(228 + 2 * AIR, wedge.delay().samples(), 0.01);
    assertEquals(DelaySource.PREDICTED, wedge.source());
  }

  @ParameterizedTest
  @CsvSource({"-1, 0", "NaN, 0", "1, Infinity"})
  void impossibleFitsAreRefused(double blocks, double fixedSamples) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> new BlockFit(RATE, blocks, fixedSamples))
            .getMessage();
    assertTrue(message.contains(blocks + " and " + fixedSamples), message);
  }
}
