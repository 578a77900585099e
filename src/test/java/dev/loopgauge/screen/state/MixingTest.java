package dev.loopgauge.screen.state;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.plan.Blend;
import dev.loopgauge.report.budget.MixRecord;
import dev.loopgauge.report.budget.MixRecord.OutcomeRecord;
import dev.loopgauge.report.budget.MixRecord.PairRecord;
import dev.loopgauge.screen.state.ScreenState.Meeting;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What comes of two paths, 2 ms apart by the budget, once they were measured. */
class MixingTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double UNCERTAINTY_MS = 0.001;

  private static MeasuredDelay later(double ms) {
    return new MeasuredDelay(new Latency(100, RATE), ms, UNCERTAINTY_MS);
  }

  private static Meeting meeting(Map<String, MeasuredDelay> measured, double levelDb) {
    OutcomeRecord outcome =
        new OutcomeRecord(
            List.of(),
            Optional.of(BigDecimal.valueOf(96)),
            BigDecimal.valueOf(2),
            Optional.empty(),
            BigDecimal.valueOf(2),
            Optional.of(BigDecimal.valueOf(levelDb)),
            Optional.of(BigDecimal.valueOf(250)),
            Optional.of(BigDecimal.valueOf(500)),
            Optional.empty(),
            Blend.COLOURS,
            "as predicted");
    PairRecord pair =
        new PairRecord(
            List.of("house", "wedge"),
            Optional.empty(),
            Optional.of(BigDecimal.valueOf(2)),
            List.of(),
            List.of(outcome));
    MixRecord mix = new MixRecord("front", List.of(), List.of(pair), Optional.empty());
    return new Mixing(RATE, measured, Optional.empty()).of(List.of(mix)).get(0).meetings().get(0);
  }

  private static String measured(Map<String, MeasuredDelay> measured, double levelDb) {
    return meeting(measured, levelDb).measured().orElse("");
  }

  @Test
  void isPredictedAloneWhereNothingWasMeasured() {
    assertEquals(
        new Meeting(
            "wedge comes 2.00 ms after house: first null of the comb at 250 Hz. Colours, as"
                + " predicted.",
            Optional.empty()),
        meeting(Map.of(), 0));
  }

  @Test
  void takesTheOneThatWasMeasuredWithTheOtherAsPredicted() {
    assertEquals(
        "With wedge as measured: wedge comes 4.00 ms after house: first null of the comb at 125 Hz."
            + " Colours, blends to one sound with a comb filter (Everest).",
        measured(Map.of("wedge", later(2)), 0));
  }

  @Test
  void saysWhichComesFirstWhereThatTurnsRound() {
    assertEquals(
        "As measured: house comes 1.00 ms after wedge: first null of the comb at 500 Hz. Colours,"
            + " blends to one sound with a comb filter (Everest).",
        measured(Map.of("house", later(4), "wedge", later(1)), 0));
  }

  @Test
  void twoThatMeetAsMeasuredHaveNoComb() {
    assertEquals(
        "As measured: wedge comes 0.00 ms after house: no comb. Safe, no null below 20 kHz"
            + " (Everest).",
        measured(Map.of("house", later(2), "wedge", later(0)), 0));
  }

  /** A copy 12 dB louder and 5 ms or more late is an echo; 12 dB softer it is none. */
  @Test
  void theLouderOneStaysTheLouderOneWhicheverComesFirst() {
    Map<String, MeasuredDelay> wedgeFirst = Map.of("house", later(10), "wedge", later(0));
    assertEquals(true, measured(wedgeFirst, -12).contains("Echo, at 5-35 ms a copy 10 dB louder"));
    assertEquals(true, measured(wedgeFirst, 12).contains("Colours, 5-35 ms blend to one sound"));
  }
}
