package dev.loopgauge.report.measured;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.measured.PairsDocument.PairRecord;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class PairsDocumentTest {
  @Test
  void namesEachPairsPolarityWhereOneIsInverted() {
    String text = text(pair(1, 2, "inverted"), pair(1, 3, "normal"), nothing(2, 3));
    assertTrue(
        text.endsWith(
            """
            Polarity of the row's sound in the column's channel:
                   2  3
              1  INV  +
              2       -
            """),
        text);
  }

  @Test
  void saysInOneSentenceThatAllPairsAreNormal() {
    String text = text(pair(1, 2, "normal"), nothing(1, 3), nothing(2, 3));
    assertTrue(text.endsWith("Polarity normal in each of these pairs.\n"), text);
  }

  @Test
  void saysNothingOfPolarityWhereNoPairHasSoundInCommon() {
    assertFalse(text(nothing(1, 2)).contains("olarity"), text(nothing(1, 2)));
  }

  private static String text(PairRecord... pairs) {
    return new PairsDocument("pairs", Outcome.MEASURED, 48_000, List.of(pairs)).text();
  }

  private static PairRecord pair(int from, int to, String polarity) {
    Optional<BigDecimal> one = Optional.of(BigDecimal.ONE);
    return new PairRecord(from, to, one, one, one, one, Optional.of(polarity), List.of());
  }

  private static PairRecord nothing(int from, int to) {
    Optional<BigDecimal> none = Optional.empty();
    return new PairRecord(from, to, none, none, none, none, Optional.empty(), List.of());
  }
}
