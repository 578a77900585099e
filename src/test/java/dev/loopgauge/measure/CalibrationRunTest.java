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
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class CalibrationRunTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final ChannelPair CABLE = new ChannelPair(1, 2);
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
            CABLE,
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

  private static SessionInfo info(int block) {
    return new SessionInfo("jack", "A", "B", RATE, block, true);
  }

  private static Calibration done(ScriptedSession... sessions) throws CaptureException {
    return assertInstanceOf(CalibrationRun.Outcome.Done.class, run(sessions)).calibration();
  }

  private static CalibrationRun.Outcome run(ScriptedSession... sessions) throws CaptureException {
    var backend = new ScriptedBackend("jack", new Availability.Unusable("", ""), sessions);
    var request =
        new SessionRequest(
            Optional.empty(), Optional.empty(), List.of(1), List.of(2), Optional.empty(), 0);
    var plan = new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 0.25, -20), 1, 0.1);
    return new CalibrationRun(backend, request, CABLE, plan).run(NOW);
  }
}
