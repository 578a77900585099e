package dev.loopgauge.chain;

import static dev.loopgauge.chain.ChainFiles.budget;
import static dev.loopgauge.chain.ChainFiles.rig;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChainBudgetTest {
  private static final SampleRate CD_RATE = new SampleRate(44_100);
  private static final String FIXED_PART = "samples: 219"; // 4.5625 ms at 48 kHz

  @Test
  void stagesAreListedInOrderWithTheirDelays() {
    PathBudget budget = budget(ChainFiles.theatre(), "vocal-house");
    assertEquals(
        List.of("stage-box-in", "console", "host-blocks", "host-fixed", "limiter", "stage-box-out"),
        budget.stages().stream().map(StageDelay::name).toList());
    assertEquals(
        List.of(12.0, 38.4, 128.0, 219.0, 240.0, 11.0),
        budget.stages().stream().map(StageDelay::delay).map(Latency::samples).toList());
    assertEquals(648.4, budget.delay().samples(), 1e-9);
    assertEquals(Listener.HOUSE, budget.listener());
  }

  @Test
  void tolerancesAddUpWhateverTheirUnit() {
    PathBudget budget = budget(ChainFiles.theatre(), "vocal-house");
    assertEquals(1 + 0.05 * 48 + 2, budget.toleranceSamples(), 1e-9);
  }

  @Test
  void loopGoesRoundTheAirUnlessListed() {
    PathBudget wedge = budget(ChainFiles.theatre(), "vocal-wedge");
    assertEquals(12 + 38.4 + 192 + 11, wedge.loop().samples(), 1e-9);
    assertEquals(3.4, wedge.loopToleranceSamples(), 1e-9);
    assertEquals(1.8 / 343.2 * 48_000, wedge.delay().minus(wedge.loop()).samples(), 1e-9);
    PathBudget tower = budget(ChainFiles.theatre(), "field-tower");
    assertEquals(38.4, tower.loop().samples(), 1e-9);
    assertEquals(List.of("console"), tower.loopStages().stream().map(StageDelay::name).toList());
  }

  @Test
  void pathThroughTheAirAloneHasAnEmptyLoop() {
    PathBudget air = budget(rig("metres: 3", "feet: 2"), "all");
    assertEquals(0, air.loop().samples());
    assertTrue(air.delay().samples() > 0);
  }

  @Test
  void stagePassedTwiceCountsTwice() {
    Chain chain =
        ChainFiles.parsed(
            "sample-rate: 48000\nstages: { box: { samples: 10, tolerance-samples: 1 } }\n"
                + "paths: { there-and-back: { listener: house, stages: [box, box] } }");
    assertEquals(20, budget(chain, "there-and-back").delay().samples());
    assertEquals(2, budget(chain, "there-and-back").toleranceSamples());
  }

  /** Common practice, no source: what one rig read at 48 kHz. */
  @ParameterizedTest
  @CsvSource({"32, 5.9", "64, 7.2", "128, 9.9"})
  void twoBlocksAndAFixedPartGiveWhatOneRigRead(int blockSize, double ms) {
    Chain chain = rig("blocks: 2", FIXED_PART).withBlockSize(blockSize);
    assertEquals(ms, budget(chain, "all").delay().ms(), 0.1);
  }

  /** Common practice, no source: 5.9 ms tapped at the input, 6.27 ms through an insert and back. */
  @Test
  void insertAndBackAddsWhatOneRigRead() {
    Latency tapped = budget(rig("blocks: 2", FIXED_PART).withBlockSize(32), "all").delay();
    Latency inserted =
        budget(rig("blocks: 2", FIXED_PART, "ms: 0.37").withBlockSize(32), "all").delay();
    assertEquals(0.37, inserted.minus(tapped).ms(), 1e-9);
    assertEquals(6.27, inserted.ms(), 0.1);
  }

  /** Common practice, no source: 8-9 % later at 44.1 kHz; derived: 48/44.1. */
  @Test
  void whatIsCountedInSamplesIsLaterAtALowerRate() {
    Chain chain = rig("blocks: 2", FIXED_PART, "packets: 3, packet-time-us: 1000");
    double before = budget(chain, "all").delay().ms();
    Latency after = budget(chain.withSampleRate(CD_RATE), "all").delay();
    assertEquals(48 / 44.1, after.ms() / before, 1e-12);
    assertEquals(CD_RATE, after.rate());
  }

  @Test
  void timesAndDistancesKeepTheirMillisecondsAtAnyRate() {
    Chain chain = rig("ms: 0.8, tolerance-ms: 0.1", "metres: 1.8", "feet: 3");
    PathBudget before = budget(chain, "all");
    PathBudget after = budget(chain.withSampleRate(CD_RATE).withBlockSize(512), "all");
    assertEquals(before.delay().ms(), after.delay().ms(), 1e-12);
    assertEquals(before.toleranceSamples() * 44.1 / 48, after.toleranceSamples(), 1e-12);
  }

  /** CS5361 12 samples (single speed) and CS4234 11, at the output rate: data sheets (issuer). */
  @Test
  void converterPairOfItsDataSheetsIsUnderHalfAMillisecond() {
    PathBudget pair = budget(rig("samples: 12", "samples: 11"), "all");
    assertEquals(23, pair.delay().samples());
    assertEquals(0.4792, pair.delay().ms(), 0.00005);
  }

  /** PCM6240-Q1: 17.1 samples are 356.25 us at 48 kHz; PCM5122: 3.5 are 0.0729 ms (reported). */
  @ParameterizedTest
  @CsvSource({"17.1, 0.35625", "3.5, 0.0729"})
  void fractionsOfASampleCount(double samples, double ms) {
    assertEquals(ms, budget(rig("samples: " + samples), "all").delay().ms(), 0.00005);
  }

  @Test
  void fractionsOfBlocksAndPacketsCount() {
    assertEquals(96, budget(rig("blocks: 1.5"), "all").delay().samples());
    assertEquals(360, budget(rig("packets: 7.5, packet-time-us: 1000"), "all").delay().samples());
  }

  @Test
  void aPathOfAnotherChainIsRefused() {
    ChainPath foreign = rig("samples: 1").path("all");
    assertThrows(
        IllegalArgumentException.class, () -> ChainBudget.of(ChainFiles.theatre(), foreign));
  }

  @Test
  void loopHasTheTolerancesOfItsOwnStagesAlone() {
    Chain chain =
        ChainFiles.parsed(
            """
            chain: Pier
            sample-rate: 48000
            block-size: 64
            stages:
              box: { samples: 10, tolerance-samples: 1 }
              throw: { metres: 3, tolerance-samples: 7 }
            paths:
              all: { listener: wedge, stages: [box, throw] }
            """);
    assertEquals(8, budget(chain, "all").toleranceSamples(), 1e-9);
    assertEquals(1, budget(chain, "all").loopToleranceSamples(), 1e-9);
  }
}
