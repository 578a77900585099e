package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.Polarity;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExplanationTest {
  /** 23 + 128 + 219 + 240 + 40 (of time) + 480 of air = 1130 samples. */
  private static final Chain CHAIN =
      Rigs.parsed(
          """
          chain: Field stage
          sample-rate: 48000
          block-size: 64
          stages:
            box: { samples: 23 }
            host: { blocks: 2 }
            fixed: { samples: 219 }
            limiter: { samples: 241, reported-by: the host }
            riser: { samples: 77, reported-by: the host }
            desk: { ms: 0.8333333333333333 }
            throw: { metres: 3.432 }
          paths:
            heard: { listener: wedge, stages: [box, host, fixed, limiter, desk, throw],
                     loop: [box, host, fixed, limiter, desk, throw] }
            patched: { listener: wedge, stages: [box, host, fixed, limiter, desk, throw] }
            dry: { listener: wedge, stages: [box, desk] }
          """);

  private static final double PATCHED = 23 + 128 + 219 + 241 + 40;

  private static Comparison compare(String path, double samples) {
    return Comparison.of(Rigs.measured(samples, 0.05, Rigs.RATE), CHAIN, CHAIN.path(path), 1);
  }

  private static List<String> causes(Comparison comparison) {
    return comparison.explanations().stream().map(Explanation::cause).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-241 | stage-absent | 'limiter' is not in the path (0 samples instead of 241)",
        "219 | stage-twice | 'fixed' once too often (219 samples more)",
        "64 | extra-block | 'host' costs 3 blocks of 64 samples instead of 2",
        "-64 | fewer-blocks | 'host' costs 1 block of 64 samples instead of 2",
        "77 | reported-not-compensated | the host may delay this path to match 'riser' (77"
            + " samples)",
        "384 | block-size | a block of 256 samples, not 64",
      })
  void namesTheStageTheOldAndTheNewValue(double off, String cause, String words) {
    Comparison comparison = compare("patched", PATCHED + off);
    Explanation named =
        comparison.explanations().stream()
            .filter(e -> e.cause().equals(cause))
            .findFirst()
            .orElseThrow(() -> new AssertionError(comparison.explanations()));
    assertTrue(named.text().contains(words), named.text());
    assertTrue(named.text().matches(".*\\. [A-Z].*[.?]"), named.text());
    assertEquals(PATCHED + off, named.predictedSamples(), 1e-9);
    assertEquals(0, named.residualSamples(), 1e-9);
  }

  @Test
  void aRigOnAnotherWordClockIsLateByItsRatio() {
    double found = (PATCHED - 40) * 48 / 44.1 + 40;
    Explanation first = compare("patched", found).explanations().get(0);
    assertEquals("sample-rate", first.cause());
    assertTrue(first.text().contains("44100 Hz, not 48000"), first.text());
    assertEquals(0, first.residualSamples(), 1e-9);
  }

  @Test
  void aDistanceIsBlamedOnlyWhereTheLoopRunsThroughAir() {
    double halfAMetre = 0.5 / 343.2 * 48_000;
    Comparison heard = compare("heard", PATCHED + 480 + halfAMetre);
    assertEquals(List.of("distance"), causes(heard));
    assertTrue(heard.explanations().get(0).text().contains("'throw' is 3.93 m long, not 3.43"));
    assertEquals(List.of(Explanation.NONE_FITS), causes(compare("dry", 63 + halfAMetre)));
  }

  @Test
  void aDistanceBeyondBeliefIsNoExplanation() {
    double tenMetres = 10 / 343.2 * 48_000;
    assertTrue(!causes(compare("heard", PATCHED + 480 + tenMetres)).contains("distance"));
  }

  @Test
  void twoChangesAreTriedWhereNoneFitsAlone() {
    Comparison comparison = compare("patched", PATCHED + 384 - 241);
    assertTrue(causes(comparison).get(0).contains("+"), causes(comparison).toString());
    assertTrue(
        comparison.explanations().stream()
            .anyMatch(
                e ->
                    e.cause().equals("block-size+stage-absent")
                        && e.text().contains("block of 256 samples, not 64")
                        && e.text().contains("'limiter' is not in the path")),
        comparison.explanations().toString());
  }

  @Test
  void saysSoWhenNothingFits() {
    Comparison comparison = compare("dry", 63 + 5000);
    assertEquals(List.of(Explanation.NONE_FITS), causes(comparison));
    Explanation none = comparison.explanations().get(0);
    assertTrue(none.text().contains("5000 samples that the chain file doesn't state"), none.text());
    assertEquals(63, none.predictedSamples(), 1e-9);
    assertEquals(5000, none.residualSamples(), 1e-9);
  }

  @Test
  void asksForAnotherBlockSizeWhereTwoCausesGiveTheSameDelay() {
    Comparison comparison = compare("patched", PATCHED + 128);
    assertEquals(List.of("block-size", "stage-twice", "extra-block"), causes(comparison));
    ExtraMeasurement extra = comparison.tellApart().orElseThrow();
    assertEquals(OptionalInt.of(128), extra.blockSize());
    assertEquals(
        List.of(PATCHED + 128, PATCHED + 384, PATCHED + 384),
        extra.outcomes().stream().map(ExtraMeasurement.Outcome::predictedSamples).toList());
    assertTrue(
        extra.text().contains("779 samples means block-size=128; 1035 samples means twice=host or"),
        extra.text());
  }

  @Test
  void aSecondReadingLeavesTheCausesThatGiveBoth() {
    Comparison comparison = compare("patched", PATCHED + 128);

    Comparison told = comparison.toldApart(Rigs.measured(PATCHED + 384, 0.05, Rigs.RATE));
    assertEquals(List.of("stage-twice", "extra-block"), causes(told));
    ExtraMeasurement made = told.tellApart().orElseThrow();
    assertEquals(PATCHED + 384, made.measuredSamples().orElseThrow());
    assertTrue(made.text().contains("at a block of 128: 1035 samples, as with twice=host or"));

    Comparison strange = comparison.toldApart(Rigs.measured(PATCHED + 50, 0.05, Rigs.RATE));
    assertEquals(List.of(Explanation.NONE_FITS), causes(strange));
    assertTrue(
        strange.tellApart().orElseThrow().text().endsWith("which none of these causes gives"));
  }

  @Test
  void sendsToTheRigWhereNoBlockSizeTellsCausesApart() {
    Comparison comparison = compare("patched", PATCHED + 241);
    assertEquals(List.of("reported-not-compensated", "stage-twice"), causes(comparison));
    ExtraMeasurement extra = comparison.tellApart().orElseThrow();
    assertEquals(OptionalInt.empty(), extra.blockSize());
    assertTrue(extra.text().contains("No other block size tells them apart."), extra.text());
  }

  /**
   * No path answers at once; the same reading without a later arrival is a part that is missing.
   */
  @Test
  void strongestSoundAtOnceBeforeAnotherIsCrosstalk() {
    Arrival leak = new Arrival(0.002, 0, Polarity.NORMAL);
    Arrival path = new Arrival(PATCHED, -20, Polarity.NORMAL);
    Comparison leaking =
        Comparison.of(
            Rigs.measured(0.002, 0.05, Rigs.RATE, List.of(leak, path)),
            CHAIN,
            CHAIN.path("patched"),
            1);
    assertEquals(List.of(Explanation.CROSSTALK), causes(leaking));
    assertTrue(leaking.tellApart().isEmpty());
    Comparison alone =
        Comparison.of(
            Rigs.measured(0.002, 0.05, Rigs.RATE, List.of(leak)), CHAIN, CHAIN.path("patched"), 1);
    assertFalse(causes(alone).contains(Explanation.CROSSTALK));
  }

  @Test
  void explainsNothingWithinBudget() {
    Comparison comparison = compare("patched", PATCHED);
    assertEquals(List.of(), comparison.explanations());
    assertTrue(comparison.tellApart().isEmpty());
  }

  @Test
  void namesNoStageThatThePathDoesNotPass() {
    assertTrue(
        compare("dry", 63 + 77).explanations().stream().noneMatch(e -> e.text().contains("riser")),
        "dry never enters the host");
    assertEquals(List.of("reported-not-compensated"), causes(compare("patched", PATCHED + 77)));
  }

  @Test
  void whatTheServerRefutesIsNotNamed() {
    Comparison guessed = compare("patched", PATCHED + 128);
    assertTrue(causes(guessed).contains("block-size"));
    Comparison known =
        Comparison.of(
            Rigs.measured(PATCHED + 128, 0.05, Rigs.RATE),
            CHAIN,
            CHAIN.path("patched"),
            1,
            KnownFacts.of(64, Rigs.RATE));
    assertEquals(List.of("stage-twice", "extra-block"), causes(known));
    Comparison other =
        Comparison.of(
            Rigs.measured(PATCHED + 128, 0.05, Rigs.RATE),
            CHAIN,
            CHAIN.path("patched"),
            1,
            KnownFacts.of(128, Rigs.RATE));
    assertTrue(causes(other).contains("block-size"), causes(other).toString());
  }

  /** 3.432 m: 1.1 m more is believed, 1.2 m is not, though 3 m would be a short way. */
  @Test
  void aDistanceIsBelievedToAThirdOfWhatIsStated() {
    double metre = 48_000 / 343.2;
    assertTrue(causes(compare("heard", PATCHED + 480 + 1.14 * metre)).contains("distance"));
    assertTrue(!causes(compare("heard", PATCHED + 480 + 1.15 * metre)).contains("distance"));
    assertTrue(causes(compare("heard", PATCHED + 480 - 1.14 * metre)).contains("distance"));
    assertTrue(!causes(compare("heard", PATCHED + 480 - 1.15 * metre)).contains("distance"));
  }

  @Test
  void causesAsLikelyAsTheFirstTie() {
    List<Explanation> tied = compare("patched", PATCHED + 241).explanations();
    assertEquals(0, tied.get(0).cost(), 1e-9);
    assertEquals(0.5, tied.get(1).cost(), 1e-9);
    assertTrue(tied.get(1).ties());
    Explanation far = compare("patched", PATCHED + 128).explanations().get(2);
    assertTrue(far.cost() > 1 && !far.ties(), far.toString());
  }

  /** Twice 'fixed' leaves 6.9 of the 7 samples allowed; 384 more and 114 less leave 0.1. */
  @Test
  void saysSoWhereTwoChangesFitBetterThanOne() {
    Chain chain =
        Rigs.parsed(
            """
            sample-rate: 48000
            block-size: 64
            stages:
              host: { blocks: 2 }
              fixed: { samples: 263 }
              limiter: { samples: 114 }
            paths:
              p: { listener: house, stages: [host, fixed, limiter] }
            """);
    double stated = 128 + 263 + 114;
    Comparison comparison =
        Comparison.of(Rigs.measured(stated + 269.9, 4, Rigs.RATE), chain, chain.path("p"), 3);
    Explanation first = comparison.explanations().get(0);
    assertEquals("block-size+stage-absent", first.cause());
    assertTrue(first.text().startsWith("Two changes at once fit better than one: "), first.text());
    assertTrue(causes(comparison).contains("stage-twice"), causes(comparison).toString());

    Comparison near =
        Comparison.of(Rigs.measured(stated + 263, 4, Rigs.RATE), chain, chain.path("p"), 3);
    assertEquals("stage-twice", causes(near).get(0));
  }

  @Test
  void aHostOfItsOwnMayRunAtAnotherBlockSize() {
    Chain chain =
        Rigs.parsed(
            """
            sample-rate: 48000
            hosts: { truck: { block-size: 256, sample-rate: 96000 } }
            stages:
              desk: { ms: 1 }
              truck-blocks: { blocks: 2, host: truck }
            paths:
              mix: { listener: stream, stages: [desk, truck-blocks] }
            """);
    Comparison comparison =
        Comparison.of(
            Rigs.measured(48 + 512, 0.05, Rigs.RATE),
            chain,
            chain.path("mix"),
            1,
            KnownFacts.of(64, Rigs.RATE));
    assertTrue(
        comparison.explanations().stream()
            .anyMatch(e -> e.text().startsWith("'truck' runs at a block of 512 samples, not 256")),
        comparison.explanations().toString());
  }
}
