package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Standing;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MixBudgetTest {
  private static final double EXACT = 1e-9;

  private static MixPair pair(Chain chain) {
    return Harbour.mix(chain).pairs().get(0);
  }

  /**
   * In-ear comes 488 samples = 10.1667 ms before the house: null at 1 / 0.020333 s = 49.18 Hz. What
   * both pass, box and console, cancels with its tolerance; the host's 2 samples stay.
   */
  @Test
  void pairIsApartByWhatTheyDoNotShare() {
    MixPair pair = pair(Harbour.chain());
    assertEquals("vocal-in-ear", pair.first().path());
    assertEquals("vocal-house", pair.second().path());
    MixOutcome outcome = pair.outcomes().get(0);
    assertEquals(1, pair.outcomes().size());
    assertEquals(488, outcome.secondLater().samples(), EXACT);
    assertEquals(2, pair.toleranceSamples(), EXACT);
    assertEquals(49.180328, outcome.overlap().comb().firstNullHz().orElseThrow(), 1e-6);
    assertEquals(98.360656, outcome.overlap().comb().nullSpacingHz().orElseThrow(), 1e-6);
    assertEquals(Blend.COLOURS, outcome.overlap().effect());
  }

  /** The later path, the house, is 6 dB down: 9.57 dB of ripple (derived, Everest chapter 10). */
  @Test
  void levelsOfTheMixMakeTheRipple() {
    Overlap overlap =
        pair(Harbour.with("[vocal-house, vo", "[{ path: vocal-house, level-db: -6 }, vo"))
            .outcomes()
            .get(0)
            .overlap();
    assertEquals(-6, overlap.laterLevelDb());
    assertEquals(9.57, overlap.comb().rippleDb().orElseThrow(), 0.005);
  }

  /** The limiter's 240 samples are added to the in-ear too: 488 - 240 = 248 remain. */
  @Test
  void compensatedStageMakesAllPathsEquallyLateInsteadOfApart() {
    MixBudget mix = Harbour.mix(Harbour.with("reported-by: host", "compensated: yes"));
    assertEquals(248, mix.pairs().get(0).outcomes().get(0).secondLater().samples(), EXACT);
    assertEquals(0, mix.arrivals().get(0).added().samples(), EXACT);
    assertEquals(240, mix.arrivals().get(1).added().samples(), EXACT);
    assertEquals(71 + 240, mix.arrivals().get(1).delay().samples(), EXACT);
  }

  /**
   * 71 + 240 samples = 6.48 ms, over the in-ear limit of 5 ms, though the path itself is 1.48 ms.
   */
  @Test
  void deskThatWaitsForOthersCanPutAListenerOver() {
    MixArrival inEar =
        Harbour.mix(Harbour.with("reported-by: host", "compensated: yes")).arrivals().get(1);
    assertEquals(Standing.WITHIN, inEar.path().standing());
    assertEquals(Standing.OVER, inEar.standing());
  }

  /** A desk matches the longest compensated part, it doesn't add up those of different paths. */
  @Test
  void deskBringsEachPathUpToTheLongestCompensatedPart() {
    Chain chain =
        Harbour.with(
            "reported-by: host", "compensated: yes",
            "box-out:     { samples: 11 }",
                "box-out: { samples: 11 }\n  eq: { samples: 90, compensated: yes }",
            "in-ear, stages: [box-in, console, box-out]",
                "in-ear, stages: [box-in, console, eq, box-out]");
    MixBudget mix = Harbour.mix(chain);
    assertEquals(0, mix.arrivals().get(0).added().samples(), EXACT);
    assertEquals(240 - 90, mix.arrivals().get(1).added().samples(), EXACT);
    assertEquals(248, mix.pairs().get(0).outcomes().get(0).secondLater().samples(), EXACT);
  }

  @Test
  void unknownCompensationShowsBothOutcomes() {
    MixBudget mix = Harbour.mix(Harbour.with("reported-by: host", "compensated: unknown"));
    MixPair pair = mix.pairs().get(0);
    assertEquals(List.of("limiter"), pair.unknown());
    assertEquals(2, pair.outcomes().size());
    assertEquals(List.of(), pair.outcomes().get(0).compensated());
    assertEquals(488, pair.outcomes().get(0).secondLater().samples(), EXACT);
    assertEquals(List.of("limiter"), pair.outcomes().get(1).compensated());
    assertEquals(248, pair.outcomes().get(1).secondLater().samples(), EXACT);
    assertEquals(Standing.WITHIN, mix.arrivals().get(1).standing());
    assertEquals(Standing.OVER, mix.arrivals().get(1).standingIfAll());
  }

  /** None, the first alone, the second alone, both: 488, 248, 368, 128 samples apart. */
  @Test
  void severalUnknownStagesAreGuessedAloneAndTogether() {
    Chain chain =
        Harbour.with(
            "reported-by: host", "compensated: unknown",
            "120, tolerance-samples: 2", "120, tolerance-samples: 2, compensated: unknown");
    assertEquals(
        List.of(488.0, 368.0, 248.0, 128.0),
        pair(chain).outcomes().stream().map(o -> o.secondLater().samples()).toList());
  }

  @Test
  void whatBothPassIsNotUnknownBetweenThem() {
    MixPair pair = pair(Harbour.with("samples: 11", "samples: 11, compensated: unknown"));
    assertEquals(List.of(), pair.unknown());
    assertEquals(1, pair.outcomes().size());
  }

  /** A wedge 3.432 m away is 10 ms = 480 samples later in air, which no cable runs through. */
  @Test
  void loopsAreComparedWithoutAir() {
    Chain chain =
        Harbour.with(
            "box-out:     { samples: 11 }", "box-out: { samples: 11 }\n  throw: { metres: 3.432 }",
            "in-ear, stages: [box-in, console, box-out]",
                "wedge, stages: [box-in, console, box-out, throw]");
    MixOutcome outcome = pair(chain).outcomes().get(0);
    assertEquals(488 - 480, outcome.secondLater().samples(), 1e-6);
    assertEquals(488, outcome.loopSecondLater().samples(), EXACT);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1, 12.5, 400})
  void sameDelayOnAllPathsSetsNobodyApart(double ms) {
    Chain chain = Harbour.with("console:     { ms: 1,", "console: { ms: " + (1 + ms) + ",");
    assertEquals(pair(Harbour.chain()), pair(chain));
  }

  /** 488 samples apart unless the desk compensates 600 more that only the earlier path passes. */
  @Test
  void unknownStageCanTurnThePairRound() {
    Chain chain =
        Harbour.with(
            "box-out:     { samples: 11 }",
                "box-out: { samples: 11 }\n  eq: { samples: 600, compensated: unknown }",
            "in-ear, stages: [box-in, console, box-out]",
                "in-ear, stages: [box-in, console, eq, box-out]");
    MixPair pair = pair(chain);
    assertEquals("vocal-house", pair.first().path());
    assertEquals(
        List.of(112.0, -488.0),
        pair.outcomes().stream().map(o -> o.secondLater().samples()).toList());
    assertEquals(488 / 48.0, pair.outcomes().get(1).overlap().delayMs(), EXACT);
  }

  /** 0.1 + 0.2 ms meet 0.3 ms, though not in binary. */
  @Test
  void pathsThatMeetHaveNoNull() {
    Chain chain =
        Harbour.with(
            "box-out:     { samples: 11 }",
                "box-out: { samples: 11 }\n  a: { ms: 0.1 }\n  b: { ms: 0.2 }\n  c: { ms: 0.3 }",
            "[box-in, console, host-blocks, host-fixed, limiter, box-out]", "[box-in, a, b]",
            "in-ear, stages: [box-in, console, box-out]", "in-ear, stages: [box-in, c]");
    Overlap overlap = pair(chain).outcomes().get(0).overlap();
    assertEquals(OptionalDouble.empty(), overlap.comb().firstNullHz());
    assertEquals(Blend.SAFE, overlap.effect());
  }

  @Test
  void everyTwoPathsAreAPair() {
    Chain chain = Harbour.with("vocal-in-ear]", "vocal-in-ear, vocal-stream, band-in-ear]");
    assertEquals(6, Harbour.mix(chain).pairs().size());
  }
}
