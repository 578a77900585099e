package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.FeedbackGuard;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeasurementPlanTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final SessionInfo INFO = new SessionInfo("jack", "A", "A", RATE, 256, true);

  private static MeasurementPlan plan(StimulusKind kind) {
    return new MeasurementPlan(new PlayedStimulus(kind, 0.5, -20), 3, 0.2);
  }

  @ParameterizedTest
  @EnumSource
  void listensOnlyWhereNothingPlays(StimulusKind kind) {
    Take take = plan(kind).schedule(INFO, 3).together(2);

    assertEquals(2, take.sends().size());
    assertEquals(3, take.listening().size());
    for (Take.Segment gap : take.listening()) {
      assertTrue(gap.to() - gap.from() >= RATE.samplesIn(0.55), "room for the longest delay");
      assertTrue(gap.to() <= take.frames());
      assertEquals(0, take.sends().get(0).slice(gap.from(), gap.to()).peak());
      assertTrue(take.sends().get(0).at(gap.from() - 1) != 0);
    }
  }

  @ParameterizedTest
  @EnumSource
  void eachReadingHoldsTheWholeStimulusAtTheLongestDelay(StimulusKind kind) {
    Schedule schedule = plan(kind).schedule(INFO, 3);
    Take take = schedule.together(1);
    int longest = RATE.samplesIn(plan(kind).maxDelayWithCardSeconds(INFO));
    Signal late = take.sends().get(0).slice(-longest, take.frames() - longest);

    List<Reading> readings =
        IntStream.range(0, 3)
            .mapToObj(turn -> new Turn(schedule, turn, 0, List.of(late)).againstPlayed(0))
            .toList();
    assertEquals(3, readings.size());
    for (Reading reading : readings) {
      assertEquals(
          schedule.played().energy(),
          reading.reference().slice(0, schedule.played().length()).energy(),
          1e-9);
      assertEquals(
          schedule.played().energy(),
          reading.ret().slice(0, reading.ret().length()).energy(),
          1e-9);
      assertEquals(0, reading.ret().slice(0, longest).peak());
    }
  }

  @ParameterizedTest
  @EnumSource
  void noLateStimulusPassesForFeedback(StimulusKind kind) {
    Take take = plan(kind).schedule(INFO, 3).together(1);
    for (int delay = 0; delay < RATE.samplesIn(0.3); delay += 1111) {
      float[][] late = new float[1][take.frames()];
      for (int i = delay; i < take.frames(); i++) {
        late[0][i] = (float) take.sends().get(0).at(i - delay);
      }
      assertFalse(new FeedbackGuard(take, RATE).trips(late, take.frames()), "delay " + delay);
    }
  }

  /** With the usual plan, which is what a person waits for. */
  @ParameterizedTest
  @CsvSource({"44100, 64", "44100, 1024", "48000, 256", "48000, 2048", "96000, 2048"})
  void aReferencedTakeIsLittleLongerThanItsSound(int hertz, int buffer) {
    SampleRate rate = new SampleRate(hertz);
    SessionInfo info = new SessionInfo("jack", "A", "A", rate, buffer, true);
    PlayedStimulus sweep = new PlayedStimulus(StimulusKind.SWEEP, 1, -20);
    Schedule schedule = new MeasurementPlan(sweep, 3, 0.2).referenced(info, 3);
    double longer = (double) schedule.frames() / hertz - 3;
    assertTrue(longer <= 1.2, longer + " s longer");
    assertEquals(3, schedule.together(2).listening().size());
  }

  /** However late the card is, the last turn is whole at the longest delay. */
  @ParameterizedTest
  @EnumSource
  void aReferencedTurnIsWholeWhereTheCardIsLate(StimulusKind kind) {
    Schedule schedule = plan(kind).referenced(INFO, 3);
    Take take = schedule.together(1);
    int card = INFO.latestSamples() + RATE.samplesIn(0.1);
    int longest = RATE.samplesIn(0.2);
    Signal sound = take.sends().get(0);
    List<Signal> late =
        List.of(
            sound.slice(-card, take.frames() - card),
            sound.slice(-card - longest, take.frames() - card - longest));
    for (int turn = 0; turn < 3; turn++) {
      Reading reading = new Turn(schedule, turn, 0, late).againstReference(0, 1, card);
      double energy = schedule.played().energy();
      assertEquals(energy, reading.reference().slice(0, schedule.period()).energy(), 1e-9);
      assertEquals(energy, reading.ret().slice(0, schedule.period()).energy(), 1e-9);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 101})
  void refusesRepeatsOutOfRange(int repeats) {
    PlayedStimulus sweep = new PlayedStimulus(StimulusKind.SWEEP, 1, -20);
    var refused =
        assertThrows(
            IllegalArgumentException.class, () -> new MeasurementPlan(sweep, repeats, 0.5));
    assertTrue(refused.getMessage().endsWith("not " + repeats), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 10.5, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesDelaysOutOfRange(double seconds) {
    PlayedStimulus sweep = new PlayedStimulus(StimulusKind.SWEEP, 1, -20);
    assertThrows(IllegalArgumentException.class, () -> new MeasurementPlan(sweep, 1, seconds));
  }

  @Test
  void refusesTakesThatWouldNeverEnd() {
    PlayedStimulus minute = new PlayedStimulus(StimulusKind.SWEEP, 60, -20);
    var refused =
        assertThrows(IllegalArgumentException.class, () -> new MeasurementPlan(minute, 100, 10));
    assertEquals("a measurement may take 300.0 s, not 7000.0 s", refused.getMessage());
  }

  @Test
  void theReferenceNeedsAReturnOfItsOwn() {
    ChannelPair pair = new ChannelPair(1, 2);
    var refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Patching(new ChannelPair(2, 2), Optional.of(pair)));
    assertEquals(
        "the reference needs a return of its own, not return 2 as well", refused.getMessage());
  }
}
