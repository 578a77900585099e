package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.DeviceRate;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import dev.loopgauge.signal.filter.Filter;
import dev.loopgauge.signal.filter.Peak;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LiveMeasurementTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final SessionInfo INFO = new SessionInfo("java-sound", "A", "B", RATE, 256, false);
  private static final MeasurementPlan PLAN =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 0.25, -20), 2, 0.1);
  private static final Patching REFERENCED =
      new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 1)));
  private static final Patching SINGLE = Patching.single(2, 2);
  private static final int CARD = 777;
  private static final long SEED = 20_260_501;

  @Test
  void theReferenceTakesTheCardOut() throws CaptureException {
    Measurement found = found(referenced(wires().join(0, 0, CARD + 595, 0.25).join(1, 1, CARD, 1)));

    assertEquals(595, found.delay().samples(), 0.01);
    assertEquals(-12.04, found.levelDb(), 0.1);
    assertEquals(Method.REFERENCED, found.method());
    assertEquals(2, found.repeats());
  }

  @Test
  void theReturnMayLeadTheReference() throws CaptureException {
    Measurement found = found(referenced(wires().join(0, 0, CARD, 1).join(1, 1, CARD + 64, 1)));

    assertEquals(-64, found.delay().samples(), 0.01);
  }

  @Test
  void oneSendMayFeedBoth() throws CaptureException {
    Patching split = new Patching(new ChannelPair(1, 2), Optional.of(new ChannelPair(1, 1)));
    var session = new ScriptedSession(INFO, wires().join(0, 0, CARD + 30, 1).join(0, 1, CARD, 1));

    Measurement found = found(new LiveMeasurement(session, split, PLAN).referenced());
    assertEquals(30, found.delay().samples(), 0.01);
    assertEquals(1, session.takes().get(0).sends().size());
  }

  @Test
  void aSilentReferenceIsRefused() throws CaptureException {
    Finding why = refusal(referenced(wires().join(0, 0, CARD + 595, 1)));

    assertEquals(FindingCode.NO_REFERENCE, why.code());
    assertTrue(why.text().startsWith("reference return 1 doesn't hear what send 1 plays: "));
  }

  @Test
  void aReferenceOfOtherSoundIsRefusedThoughTheReturnHearsTheSame() throws CaptureException {
    Signal other = new PlayedStimulus(StimulusKind.MLS, 1, -20).render(RATE);
    Finding why =
        refusal(
            referenced(
                take -> {
                  Signal early = other.slice(0, take.frames());
                  return new Capture(
                      List.of(early.slice(-100, take.frames() - 100), early), List.of());
                }));

    assertEquals(FindingCode.NO_REFERENCE, why.code());
  }

  @Test
  void anInvertedReferenceIsSaid() throws CaptureException {
    Estimate estimate = referenced(wires().join(0, 0, CARD, 1).join(1, 1, CARD, -1));

    assertEquals(Polarity.INVERTED, found(estimate).polarity());
    assertTrue(
        estimate.findings().stream()
            .anyMatch(f -> f.text().equals("the reference itself arrives inverted on return 1")),
        estimate.findings().toString());
  }

  /** An octave's mean is less than the middle of a bell one octave wide. */
  @ParameterizedTest
  @CsvSource({"1, false", "4, true", "-4, true"})
  void aReferenceThatIsNoStraightCableIsSaid(double db, boolean said) throws CaptureException {
    Filter bell = new Peak(1_000, db, 1).at(RATE);
    Estimate estimate =
        referenced(
            take -> {
              Capture heard = wires().join(0, 0, CARD + 30, 1).join(1, 1, CARD, 1).to(take);
              Signal reference = Signal.of(RATE, bell.on(heard.returns().get(1).toArray()));
              return new Capture(List.of(heard.returns().get(0), reference), List.of());
            });
    assertEquals(
        said,
        estimate.findings().stream()
            .anyMatch(
                f ->
                    f.code() == FindingCode.DISPERSIVE
                        && f.text().contains("return 1 is no straight cable: around 1000 Hz")),
        estimate.findings().toString());
  }

  @Test
  void aReferenceThatIsClippedIsSaid() throws CaptureException {
    Estimate estimate =
        referenced(
            take -> {
              Capture heard = wires().join(0, 0, CARD + 30, 1).join(1, 1, CARD, 10.2).to(take);
              double[] hot = heard.returns().get(1).toArray();
              for (int i = 0; i < hot.length; i++) {
                hot[i] = Math.max(-1, Math.min(1, hot[i]));
              }
              return new Capture(List.of(heard.returns().get(0), Signal.of(RATE, hot)), List.of());
            });
    assertTrue(
        estimate.findings().stream()
            .anyMatch(f -> f.text().contains("though send 1 plays at -20 dBFS only")),
        estimate.findings().toString());
  }

  @Test
  void aCableTakenBeforeTakesTheCardOutAndAddsItsUncertainty() throws CaptureException {
    var session =
        new ScriptedSession(INFO, wires().join(0, 0, CARD, 1), wires().join(0, 0, CARD + 595, 1));
    LiveMeasurement live = new LiveMeasurement(session, SINGLE, PLAN);
    Measurement cable = found(live.withCard());
    assertEquals(CARD, cable.delay().samples(), 0.01);
    assertEquals(Method.UNCALIBRATED, cable.method());

    Calibration calibration =
        Calibration.of(INFO, SINGLE, cable.delay().samples(), 0.5, Instant.EPOCH);
    Measurement found = found(live.lessCable(calibration, Method.CALIBRATED));
    assertEquals(595, found.delay().samples(), 0.01);
    assertEquals(Method.CALIBRATED, found.method());
    assertTrue(found.uncertaintySamples() >= 0.5, found.toString());
  }

  /** The squares of both uncertainties add, since neither knows of the other (k = 2). */
  @Test
  void aSkewIsTakenOffAndItsUncertaintyCounted() throws CaptureException {
    Wires wires = wires().join(0, 0, CARD + 595 + 3, 1).join(1, 1, CARD, 1);
    Measurement plain = found(referenced(wires));
    Calibration skew = Calibration.of(INFO, REFERENCED, 3, 0.5, Instant.EPOCH);
    LiveMeasurement live = new LiveMeasurement(new ScriptedSession(INFO, wires), REFERENCED, PLAN);
    Measurement found = found(live.lessSkew(skew));

    assertEquals(598, plain.delay().samples(), 0.01);
    assertEquals(595, found.delay().samples(), 0.01);
    assertEquals(Math.hypot(plain.uncertaintySamples(), 0.5), found.uncertaintySamples(), 1e-12);
    assertEquals(Method.REFERENCED, found.method());
  }

  @Test
  void withoutEitherItSaysThatTheCardIsInTheNumber() throws CaptureException {
    var session = new ScriptedSession(INFO, wires().join(0, 0, CARD + 595, 1));
    Estimate estimate = new LiveMeasurement(session, SINGLE, PLAN).uncalibrated("why", "hint");

    assertEquals(CARD + 595, found(estimate).delay().samples(), 0.01);
    assertEquals(Method.UNCALIBRATED, found(estimate).method());
    Finding finding = estimate.findings().get(0);
    assertEquals(FindingCode.UNCALIBRATED, finding.code());
    assertEquals("the sound card's own delay is in the number: why", finding.text());
    assertEquals("hint", finding.hint());
  }

  @Test
  void lostSoundIsRefusedHoweverGoodTheRest() throws CaptureException {
    Wires good = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1);
    Finding dropout = refusal(referenced(good.but(Incident.Kind.DROPOUT, "2 xruns")));

    assertEquals(FindingCode.DROPOUT, dropout.code());
    assertEquals("2 xruns", dropout.text());
  }

  @Test
  void aTurnThatLostSoundIsPlayedAgainAndTheCleanOnesAreKept() throws CaptureException {
    Wires good = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1);
    Told told = new Told();
    var session = new ScriptedSession(INFO, losingFirstTurn(good), good);
    Estimate estimate = playingAgain(session, told);

    assertEquals(595, found(estimate).delay().samples(), 0.01);
    assertEquals(2, found(estimate).repeats());
    assertEquals(2, session.takes().size());
    assertEquals(1, session.takes().get(1).listening().size());
    Finding said = estimate.findings().get(estimate.findings().size() - 1);
    assertEquals(FindingCode.DROPOUT, said.code());
    assertFalse(said.refuses() || said.judged(), said.toString());
    assertEquals("one turn lost sound and was played again: an xrun", said.text());
    assertEquals(List.of("1 of 2", "2 of 2", "1 again", "1 of 1"), told.lines);
  }

  @Test
  void noMoreIsPlayedThanWasAgreedTo() throws CaptureException {
    Wires good = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1);
    var session = new ScriptedSession(INFO, losingFirstTurn(good));
    Finding why = refusal(playingAgain(session, new Told()));

    assertEquals(FindingCode.DROPOUT, why.code());
    assertEquals("3 times: an xrun", why.text());
    int played = session.takes().stream().mapToInt(take -> take.listening().size()).sum();
    assertEquals(PLAN.repeats() + Playing.MOST_SPARE, played);
  }

  @Test
  void whatWasRecordedBeforeTheSoundBrokeOffIsKept() throws CaptureException {
    Wires good = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1);
    Wires later = wires().join(0, 0, CARD + 640, 1).join(1, 1, CARD + 45, 1);
    var session = new ScriptedSession(INFO, breakingOff(good), later);
    assertEquals(595, found(playingAgain(session, new Told())).delay().samples(), 0.01);
    assertEquals(1, session.renewed());
  }

  @Test
  void aCardWhoseDelayMayHaveMovedIsNotPlayedAgain() {
    var session = new ScriptedSession(INFO, breakingOff(wires().join(0, 0, CARD, 1)));
    LiveMeasurement live =
        new LiveMeasurement(
            session, SINGLE, PLAN, ArrivalChoice.UNDECIDED, Playing.again(new Told()));
    assertEquals(
        CaptureException.Kind.SHORT, assertThrows(CaptureException.class, live::withCard).kind());
  }

  private static Estimate playingAgain(ScriptedSession session, Told told) throws CaptureException {
    return new LiveMeasurement(
            session, REFERENCED, PLAN, ArrivalChoice.UNDECIDED, Playing.again(told))
        .referenced();
  }

  private static ScriptedSession.Answer losingFirstTurn(Wires good) {
    return take ->
        new Capture(
            good.to(take).returns(),
            List.of(
                new Incident(Incident.Kind.DROPOUT, take.listening().get(0).from(), "an xrun")));
  }

  /** In the second turn. */
  private static ScriptedSession.Answer breakingOff(Wires good) {
    return take -> {
      int from = take.listening().get(0).to() + 100;
      Incident lost =
          new Incident(Incident.Kind.DROPOUT, from, take.frames() - from, "frames were lost");
      throw new CaptureException(CaptureException.Kind.SHORT, "frames were lost", "try")
          .after(new Capture(good.to(take).returns(), List.of(lost)));
    };
  }

  /** What is said while it plays. */
  private static final class Told implements Playing.Listener {
    private final List<String> lines = new ArrayList<>();

    @Override
    public void heard(int turn, int turns, double peakDbfs) {
      lines.add(turn + " of " + turns);
      assertEquals(-20, peakDbfs, 0.5);
    }

    @Override
    public void again(int turns, int lost) {
      lines.add(turns + " again");
    }
  }

  @Test
  void aChangedBlockSizeIsRefused() throws CaptureException {
    Wires good = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1);
    Finding changed = refusal(referenced(good.but(Incident.Kind.BLOCK_SIZE_CHANGED, "now 512")));

    assertEquals(FindingCode.DROPOUT, changed.code());
    assertEquals("now 512", changed.text());
  }

  @Test
  void aDeviceThatRunsAtAnotherRateIsNoNumber() throws CaptureException {
    Finding why = refusal(running(RateSource.ANY, Optional.of(new DeviceRate(-977, 40))));
    assertEquals(FindingCode.RATE_MISMATCH, why.code());
    assertTrue(why.text().contains("977 ± 40 ppm too slow"), why.text());
    refusal(running(RateSource.DEVICE, Optional.of(new DeviceRate(541, 40))));
    found(running(RateSource.DEVICE, Optional.of(new DeviceRate(539, 40))));
  }

  @Test
  void aServersOwnWordOnItsRateIsBelieved() throws CaptureException {
    Estimate slow = running(RateSource.SERVER, Optional.of(new DeviceRate(-20_000, 40)));
    assertEquals(595, found(slow).delay().samples(), 0.01);
  }

  @Test
  void aSystemThatTakesAnyRateMakesTheDelayLessCertainByAThousandth() throws CaptureException {
    double sure = found(running(RateSource.DEVICE, Optional.empty())).uncertaintySamples();
    Estimate unsure = running(RateSource.ANY, Optional.empty());
    assertEquals(sure + 0.595, found(unsure).uncertaintySamples(), 1e-4);
    Finding said = unsure.findings().get(unsure.findings().size() - 1);
    assertEquals(FindingCode.RATE_MISMATCH, said.code());
    assertTrue(
        said.text().endsWith(": 1000 ppm of the delay are added to the uncertainty"), said.text());
  }

  /** Frames may come in time, and the sound in them be too fast all the same. */
  @Test
  void theClockOfTheComputerVouchesForNoConverter() throws CaptureException {
    double sure = found(running(RateSource.DEVICE, Optional.empty())).uncertaintySamples();
    Estimate shown = running(RateSource.ANY, Optional.of(new DeviceRate(-60, 40)));
    assertEquals(sure + 0.595, found(shown).uncertaintySamples(), 1e-4);
  }

  private static Estimate running(RateSource source, Optional<DeviceRate> rate)
      throws CaptureException {
    SessionInfo info = new SessionInfo("java-sound", "A", "B", RATE, 256, false, source, 1_024);
    Wires good = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1);
    ScriptedSession.Answer answer = take -> new Capture(good.to(take).returns(), List.of(), rate);
    return new LiveMeasurement(new ScriptedSession(info, answer), REFERENCED, PLAN).referenced();
  }

  /** A card of one channel, doubled by the system: both returns hear both sends. */
  @Test
  void oneChannelTwiceIsNoReference() throws CaptureException {
    ScriptedSession.Answer doubled =
        take -> {
          Signal one = wires().join(0, 0, CARD, 1).join(1, 0, CARD, 1).to(take).returns().get(0);
          return new Capture(List.of(one, one), List.of());
        };
    Finding why = refusal(referenced(doubled));
    assertEquals(FindingCode.SAME_SIGNAL, why.code());
    assertEquals(
        "returns 2 and 1 are sample for sample alike: they may be one channel twice", why.text());
  }

  @Test
  void twoExactWiresAreTwoChannelsAsTicksShow() throws CaptureException {
    ScriptedSession session =
        new ScriptedSession(
            INFO,
            take ->
                new Capture(
                    List.of(late(take.sends().get(0), take), late(take.sends().get(1), take)),
                    List.of()));
    Estimate estimate = new LiveMeasurement(session, REFERENCED, PLAN).referenced();
    assertEquals(0, found(estimate).delay().samples(), 0.01);
    assertEquals(2, session.takes().size());
    Signal tick = session.takes().get(1).sends().get(0);
    assertTrue(tick.peak() <= 1.01 * Decibels.toFactor(PatchCheck.TICK_DBFS), "" + tick.peak());
  }

  @Test
  void oneSendForBothCanNotBeToldFromOneChannelTwice() throws CaptureException {
    Patching split = new Patching(new ChannelPair(1, 2), Optional.of(new ChannelPair(1, 1)));
    var session =
        new ScriptedSession(
            INFO,
            take -> {
              Signal heard = late(take.sends().get(0), take);
              return new Capture(List.of(heard, heard), List.of());
            });
    Finding why = refusal(new LiveMeasurement(session, split, PLAN).referenced());
    assertEquals(FindingCode.SAME_SIGNAL, why.code());
    assertEquals(1, session.takes().size());
  }

  private static Signal late(Signal played, Take take) {
    return played.slice(-CARD, take.frames() - CARD);
  }

  @Test
  void aDelayThatChangesBetweenRepeatsIsRefused() throws CaptureException {
    Finding slip =
        refusal(
            referenced(
                take -> {
                  Capture before = wires().join(0, 0, CARD + 595, 1).join(1, 1, CARD, 1).to(take);
                  Capture after = wires().join(0, 0, CARD + 659, 1).join(1, 1, CARD, 1).to(take);
                  return new Capture(
                      List.of(
                          joined(before.returns().get(0), after.returns().get(0)),
                          before.returns().get(1)),
                      List.of());
                }));

    assertEquals(FindingCode.DROPOUT, slip.code());
    assertTrue(slip.text().endsWith("agree: 595.00, 659.00 samples"), slip.text());
  }

  @Test
  void aCardWhoseDirectionsHaveClocksOfTheirOwnStillHasAReference() throws CaptureException {
    Estimate estimate =
        referenced(
            take -> {
              Capture before = wires().join(0, 0, CARD + 9, 1).join(1, 1, CARD, 1).to(take);
              Capture after = wires().join(0, 0, CARD + 12, 1).join(1, 1, CARD + 3, 1).to(take);
              return new Capture(
                  List.of(
                      joined(before.returns().get(0), after.returns().get(0)),
                      joined(before.returns().get(1), after.returns().get(1))),
                  List.of());
            });

    assertEquals(9, found(estimate).delay().samples(), 0.01);
  }

  @Test
  void nothingInTheReturnIsNoNumber() throws CaptureException {
    Estimate estimate = referenced(wires().join(1, 1, CARD, 1));

    assertEquals(FindingCode.NO_RETURN, refusal(estimate).code());
  }

  @Test
  void aFailureOfTheSoundIsPassedOn() {
    var session = new ScriptedSession(INFO, ScriptedSession.failing(CaptureException.Kind.GONE));
    var failed =
        assertThrows(
            CaptureException.class,
            () -> new LiveMeasurement(session, REFERENCED, PLAN).referenced());

    assertEquals(CaptureException.Kind.GONE, failed.kind());
  }

  @Test
  void referencedNeedsAReference() {
    var live = new LiveMeasurement(new ScriptedSession(INFO, wires()), SINGLE, PLAN);
    assertThrows(IllegalStateException.class, live::referenced);
  }

  /** The first half of one and the second half of another. */
  private static Signal joined(Signal first, Signal second) {
    double[] both = second.toArray();
    first.copyTo(0, both, 0, both.length / 2);
    return Signal.of(RATE, both);
  }

  /** Return 0 is the rig's, return 1 the reference's, in the order of the session. */
  private static Wires wires() {
    return new Wires(RATE, 2, SEED);
  }

  private static Estimate referenced(ScriptedSession.Answer answer) throws CaptureException {
    return new LiveMeasurement(new ScriptedSession(INFO, answer), REFERENCED, PLAN).referenced();
  }

  private static Measurement found(Estimate estimate) {
    return assertInstanceOf(Estimate.Found.class, estimate, estimate.toString()).measurement();
  }

  private static Finding refusal(Estimate estimate) {
    assertInstanceOf(Estimate.Refused.class, estimate, estimate.toString());
    return estimate.findings().stream().filter(Finding::refuses).findFirst().orElseThrow();
  }
}
