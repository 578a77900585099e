package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StandingTest {
  /** In-ear: Agnew & Thornton 2000 (issuer); wedge and house: common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "IN_EAR, 3,    WITHIN", "IN_EAR, 3.01,  CAUTION", "IN_EAR, 5,  CAUTION", "IN_EAR, 5.01, OVER",
    "WEDGE,  10,   WITHIN", "WEDGE,  10.01, CAUTION", "WEDGE,  15, CAUTION", "WEDGE, 15.01, OVER",
    "HOUSE,  15,   WITHIN", "HOUSE,  15.01, OVER", "STREAM, 60000, WITHIN"
  })
  void builtInLimitsAreInclusive(Listener listener, double ms, Standing standing) {
    assertEquals(standing, ListenerLimits.builtIn(listener).standing(ms));
  }

  /** Common practice, no source: a wedge is in trouble between 10 and 15 ms, in-ears sooner. */
  @ParameterizedTest
  @CsvSource({"9, WITHIN", "12, CAUTION", "16, OVER"})
  void wedgeIsInTroubleFrom10To15MsAndInEarsSooner(double ms, Standing wedge) {
    assertEquals(wedge, ListenerLimits.builtIn(Listener.WEDGE).standing(ms));
    assertEquals(Standing.OVER, ListenerLimits.builtIn(Listener.IN_EAR).standing(ms));
  }

  @ParameterizedTest
  @EnumSource(Listener.class)
  void everyBuiltInRuleNamesItsSourceOrSaysThereIsNone(Listener listener) {
    String rule = ListenerLimits.builtIn(listener).rule();
    assertTrue(rule.matches(".*(no source|[12]\\d{3}|no limit).*"), rule);
  }

  @Test
  void delayMadeOfManyPartsStillMeetsItsLimitExactly() {
    String[] tenths = new String[150];
    Arrays.fill(tenths, "ms: 0.1");
    PathBudget budget = ChainFiles.budget(ChainFiles.rig(tenths), "all");
    assertEquals(15, budget.delay().ms(), 1e-9);
    assertEquals(Standing.WITHIN, budget.standing());
  }

  @Test
  void chainFileOverridesOnlyTheListenerItNames() {
    Chain chain = ChainFiles.theatre();
    ListenerLimits inEar = chain.limits().get(Listener.IN_EAR);
    assertEquals(OptionalDouble.of(6), inEar.limitMs());
    assertEquals("set in the chain file", inEar.rule());
    assertEquals(ListenerLimits.builtIn(Listener.WEDGE), chain.limits().get(Listener.WEDGE));
    assertEquals(inEar, ChainFiles.budget(chain, "vocal-in-ear").limits());
  }

  @ParameterizedTest
  @CsvSource({
    "'wedge: { limit-ms: 12 }',   WEDGE,  10, 12",
    "'wedge: { limit-ms: 8 }',    WEDGE,  8,  8",
    "'wedge: { caution-ms: 12 }', WEDGE,  12, 15",
    "'stream: { limit-ms: 500 }', STREAM, -1, 500"
  })
  void whatAnOverrideLeavesOutStaysOrFollowsTheLimitDown(
      String override, Listener listener, double caution, double limit) {
    Chain chain =
        ChainFiles.parsed(ChainFiles.THEATRE.replaceAll("in-ear: \\{ caution.*", override));
    ListenerLimits limits = chain.limits().get(listener);
    assertEquals(caution, limits.cautionMs().orElse(-1));
    assertEquals(limit, limits.limitMs().orElse(-1));
  }

  @Test
  void cautionAboveTheLimitIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new ListenerLimits(OptionalDouble.of(6), OptionalDouble.of(5), "test"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new ListenerLimits(OptionalDouble.empty(), OptionalDouble.of(-5), "test"));
  }

  @ParameterizedTest
  @CsvSource({"0, 0, WITHIN", "0, 0.001, OVER", "5, 5, WITHIN", "5, 5.001, OVER"})
  void aDelayOfExactlyTheLimitIsWithinItAndALimitMayBeNone(
      double limit, double ms, Standing standing) {
    ListenerLimits limits =
        new ListenerLimits(OptionalDouble.of(limit), OptionalDouble.of(limit), "test");
    assertEquals(standing, limits.standing(ms));
  }
}
