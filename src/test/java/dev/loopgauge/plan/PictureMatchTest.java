package dev.loopgauge.plan;

import static dev.loopgauge.chain.Standing.OVER;
import static dev.loopgauge.chain.Standing.WITHIN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PictureMatchTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final PictureRule R37 = PictureRule.EBU_R37;

  /** A stream of one stage, seen with one picture. */
  private static Chain rig(String sound, String picture) {
    return Yaml.chain(
        """
        sample-rate: 48000
        block-size: 64
        stages:
          sound: { %s }
          camera: { ms: 10 }
        paths:
          stream: { listener: stream, stages: [sound], picture: cameras }
          house: { listener: house, stages: [sound] }
        pictures:
          cameras: { %s }
        listeners:
          house: { limit-ms: 500 }
        """
            .formatted(sound, picture));
  }

  private static PictureMatch match(Chain chain, PictureRule rule) {
    ChainPath stream = chain.path("stream");
    Latency sound = PathDelays.predicted().of(chain, stream).delay();
    return PictureMatch.of(chain, stream, sound, rule).orElseThrow();
  }

  private static Optional<PictureBlock> closest(
      Chain chain, PathDelays delays, List<Integer> sizes) {
    return PictureBlocks.of(chain, delays, R37, sizes).closest("stream");
  }

  /** One frame of 25p is 40 ms, exactly the limit of EBU R37-2007 (derived). */
  @Test
  void oneFrameOf25IsExactlyTheLimitOfR37() {
    Chain chain = rig("samples: 0", "frame-rate: 25, frames: 1");
    assertEquals(40, match(chain, R37).soundEarly().ms());
    assertEquals(WITHIN, match(chain, R37).standing());
    assertEquals(
        OVER,
        match(chain.withSampleRate(new SampleRate(44_100)), PictureRule.ATSC_IS191).standing());
    assertEquals(WITHIN, match(chain.withSampleRate(new SampleRate(44_100)), R37).standing());
  }

  /** One frame at 30000/1001 is +33.367 ms: passes EBU R37-2007, fails ATSC IS-191 (derived). */
  @Test
  void oneFrameOf2997PassesOneRuleAndFailsAnother() {
    Chain chain = rig("samples: 0", "frame-rate: 30000/1001, frames: 1");
    assertEquals(33.366667, match(chain, R37).soundEarly().ms(), 1e-6);
    assertEquals(WITHIN, match(chain, R37).standing());
    assertEquals(OVER, match(chain, PictureRule.ATSC_IS191).standing());
  }

  /** Common practice, no source; exact values derived. */
  @ParameterizedTest
  @CsvSource({
    "60000/1001, 50.05,    50",
    "30000/1001, 100.1,    100",
    "24,         125.0,    125",
    "24000/1001, 125.125,  125"
  })
  void threeFramesAreAsLateAsTheTradeSays(String frameRate, double exactMs, double aboutMs) {
    Chain chain = rig("samples: 0", "frame-rate: " + frameRate + ", frames: 3");
    double ms = match(chain, R37).soundEarly().ms();
    assertEquals(exactMs, ms, 1e-9);
    assertEquals(aboutMs, ms, 0.2);
  }

  @Test
  void picturesAreStatedInFramesInMsOrAsStages() {
    assertEquals(
        1601.6,
        match(rig("samples: 0", "frame-rate: 60000/1001, frames: 2"), R37).soundEarly().samples(),
        1e-9);
    assertEquals(2400, match(rig("samples: 0", "ms: 50"), R37).soundEarly().samples(), 1e-9);
    assertEquals(480, match(rig("samples: 0", "stages: [camera]"), R37).soundEarly().samples());
  }

  @Test
  void earlySoundIsDelayedByWhatItIsEarly() {
    PictureMatch early = match(rig("ms: 12", "ms: 50"), R37);
    assertEquals(38, early.addToSound().ms(), 1e-9);
    assertEquals(0, early.addToPicture().samples());
  }

  @Test
  void lateSoundIsNeverAdvanced() {
    PictureMatch late = match(rig("ms: 62", "ms: 50"), R37);
    assertEquals(-12, late.soundEarly().ms(), 1e-9);
    assertEquals(0, late.addToSound().samples());
    assertEquals(12, late.addToPicture().ms(), 1e-9);
  }

  @Test
  void pathsWithoutAPictureHaveNoMatch() {
    Chain chain = rig("ms: 12", "ms: 50");
    Latency sound = new Latency(576, RATE);
    assertEquals(Optional.empty(), PictureMatch.of(chain, chain.path("house"), sound, R37));
  }

  /**
   * Common practice, no source: a rig that reads 47.2 ms at a block of 1024 and 89.9 ms at 2048.
   * The line through both has 42.7 ms x 48 / 1024 = 2.001563 blocks and 47.2 ms x 48 - 2.001563 x
   * 1024 = 216 samples beside. Three frames at 59.94 are 50.05 ms: 1024 leaves 50.05 - 47.2 = 2.85
   * ms to add, 2048 would be 39.85 ms late.
   */
  @Test
  void theBlockThatMeetsThreeFramesIsFoundFromReadings() {
    BlockFit fit = new BlockFit(RATE, 42.7 * 48 / 1024, 216);
    Chain chain = rig("blocks: 2", "frame-rate: 60000/1001, frames: 3");
    PathDelays delays = PathDelays.fitted(Map.of("stream", fit));
    for (List<Integer> sizes : List.of(List.of(1024, 2048), BlockSizes.USUAL)) {
      PictureBlock best = closest(chain, delays, sizes).orElseThrow();
      assertEquals(1024, best.blockSize());
      assertEquals(2.8, best.match().addToSound().ms(), 0.1);
      assertEquals(2.85, best.match().addToSound().ms(), 1e-9);
    }
  }

  /** 150 samples of picture; one block of 100 is 50 early, of 200 is 50 late. */
  @Test
  void ofTwoBlocksEquallyFarOffTheOneThatADelayCanMendWins() {
    Chain chain = rig("blocks: 1", "ms: 3.125");
    assertEquals(
        100, closest(chain, PathDelays.predicted(), List.of(200, 100)).orElseThrow().blockSize());
  }

  @Test
  void noBlockIsNamedWhereNoneMatters() {
    assertTrue(
        closest(rig("ms: 12", "ms: 50"), PathDelays.predicted(), BlockSizes.USUAL).isEmpty());
  }
}
