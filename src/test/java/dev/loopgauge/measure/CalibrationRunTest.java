package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Wires;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.time.Instant;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationRunTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final Patching CABLE = Patching.single(1, 2);
  private static final Patching BESIDE =
      new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 1)));
  private static final int CARD = 777;
  private static final Instant NOW = Instant.parse("2026-05-01T18:30:00Z");
  private static final long SEED = 20_260_503;

  @Test
  void measuresTheCableAtEachOpening() throws CaptureException {
    Calibration made = done(opened(512, 256), opened(512, 256), opened(512, 256));

    assertEquals(512, made.delaySamples(), 0.01);
    assertTrue(made.uncertaintySamples() < 0.1, made.toString());
    assertEquals(
        new Calibration(
            "jack",
            "A",
            "B",
            RATE,
            256,
            CABLE.rig(),
            Optional.empty(),
            made.delaySamples(),
            made.uncertaintySamples(),
            NOW),
        made);
  }

  /** Delays of 512, 512 and 515: s = sqrt(3), times sqrt(1 + 1/3) = 2, expanded 4. */
  @Test
  void theScatterOverOpeningsIsPartOfTheUncertainty() throws CaptureException {
    Calibration made = done(opened(512, 256), opened(512, 256), opened(515, 256));

    assertEquals(513, made.delaySamples(), 0.01);
    assertEquals(4, made.uncertaintySamples(), 0.05);
  }

  @Test
  void closesWhatItOpened() throws CaptureException {
    ScriptedSession[] sessions = {opened(512, 256), opened(512, 256), opened(512, 256)};
    done(sessions);

    assertTrue(Stream.of(sessions).allMatch(ScriptedSession::closed));
  }

  @ParameterizedTest(name = "{0} samples")
  @ValueSource(ints = {0, 1, -3, 49, -49})
  void besideAReferenceItMeasuresTheSkewWhateverTheCardIsLate(int skew) throws CaptureException {
    Calibration made =
        assertInstanceOf(
                CalibrationRun.Outcome.Done.class,
                run(BESIDE, skewed(100, skew), skewed(900, skew), skewed(333, skew)))
            .calibration();

    assertEquals(skew, made.delaySamples(), 0.01);
    assertTrue(made.uncertaintySamples() < 0.02, made.toString());
    assertEquals(BESIDE.rig(), made.cable());
    assertEquals(BESIDE.reference(), made.reference());
  }

  @ParameterizedTest(name = "{0} samples")
  @CsvSource({"51, 51.0 samples after", "-51, 51.0 samples before", "595, 595.0 samples after"})
  void moreThanTwoPairsOfOneCardCanDifferByIsNoCable(int skew, String told)
      throws CaptureException {
    ScriptedSession first = skewed(CARD, skew);
    var refused = assertInstanceOf(CalibrationRun.Outcome.Refused.class, run(BESIDE, first));

    Finding why = refused.findings().get(0);
    assertEquals(FindingCode.BEYOND_WINDOW, why.code());
    assertEquals(
        "return 2 comes "
            + told
            + " the reference; two pairs of channels of one card differ by 50 at most",
        why.text());
    assertEquals(
        "is the path still patched? join send 2 straight to return 2 with a cable", why.hint());
    assertTrue(first.closed());
  }

  @Test
  void withoutAReferenceItSaysSo() throws CaptureException {
    var lone = new ScriptedSession(info(256), new Wires(RATE, 2, SEED).join(0, 0, CARD, 1));
    var refused = assertInstanceOf(CalibrationRun.Outcome.Refused.class, run(BESIDE, lone));

    assertEquals(FindingCode.NO_REFERENCE, refused.findings().get(0).code());
  }

  @Test
  void withoutACableThereIsNoCalibration() throws CaptureException {
    ScriptedSession silent = new ScriptedSession(info(256), new Wires(RATE, 1, SEED));
    var refused = assertInstanceOf(CalibrationRun.Outcome.Refused.class, run(silent));

    assertEquals(FindingCode.NO_RETURN, refused.findings().get(0).code());
  }

  @Test
  void aBlockSizeThatChangesBetweenOpeningsIsAFailure() {
    var failed =
        assertThrows(
            CaptureException.class, () -> run(opened(5, 256), opened(5, 128), opened(5, 256)));
    assertEquals(CaptureException.Kind.UNSUPPORTED_FORMAT, failed.kind());
  }

  private static ScriptedSession opened(int delay, int block) {
    return new ScriptedSession(info(block), new Wires(RATE, 1, SEED).join(0, 0, delay, 1));
  }

  private static ScriptedSession skewed(int card, int skew) {
    return new ScriptedSession(
        info(256),
        new Wires(RATE, 2, SEED).join(0, 0, 100 + card + skew, 1).join(1, 1, 100 + card, 1));
  }

  private static SessionInfo info(int block) {
    return new SessionInfo("jack", "A", "B", RATE, block, true);
  }

  private static Calibration done(ScriptedSession... sessions) throws CaptureException {
    return assertInstanceOf(CalibrationRun.Outcome.Done.class, run(sessions)).calibration();
  }

  private static CalibrationRun.Outcome run(ScriptedSession... sessions) throws CaptureException {
    return run(CABLE, sessions);
  }

  private static CalibrationRun.Outcome run(Patching patching, ScriptedSession... sessions)
      throws CaptureException {
    var backend = new ScriptedBackend("jack", new Availability.Unusable("", ""), sessions);
    var request =
        new SessionRequest(
            Optional.empty(),
            Optional.empty(),
            patching.sends(),
            patching.returns(),
            Optional.empty(),
            0);
    var plan = new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 0.25, -20), 1, 0.1);
    return new CalibrationRun(backend, request, patching, plan).run(NOW);
  }
}
