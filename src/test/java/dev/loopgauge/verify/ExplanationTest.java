package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
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
        "64 | extra-block | 'host' takes 3 blocks of 64 samples, not 2",
        "-64 | fewer-blocks | 'host' takes 1 blocks of 64 samples, not 2",
        "77 | reported-not-compensated | 77 samples that the host reports for 'riser' come on top",
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
    assertTrue(named.text().contains(": check "), named.text());
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
        extra.text().contains("779 samples with block-size=128, 1035 samples with twice=host or"),
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
    assertTrue(extra.text().contains("no other block size tells them apart"), extra.text());
  }

  @Test
  void explainsNothingWithinBudget() {
    Comparison comparison = compare("patched", PATCHED);
    assertEquals(List.of(), comparison.explanations());
    assertTrue(comparison.tellApart().isEmpty());
  }
}
