package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.drivers.DriversBackend;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * The drivers' JACK against the JACK adapter, on the same server: the same known delays within 0.05
 * sample, three times in a row, in full twenty.
 */
@NeedsAudioServer
@Timeout(900)
class DriversMatrixIT {
  private static final int RUNS = Boolean.getBoolean("loopgauge.full") ? 20 : 3;
  private static final int BLOCK = 1024;
  private static final double TOLERANCE = 0.05;
  private static final int[] DELAYS = {240, 2881};
  private static final ChannelPair CABLE = new ChannelPair(1, 1);
  private static final MeasurementPlan PLAN =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 0.3, -20), 1, 0.2);

  /** On a busy machine the server loses time in earnest; then the measurement is made again. */
  private static final int TRIES = 20;

  @Test
  @SuppressWarnings("try") // The rig is there to be measured.
  void measuresWhatTheJackAdapterMeasures() throws Exception {
    double farthest = 0;
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, BLOCK);
        DelayClient rig = DelayClient.start(server, "rig", lines())) {
      for (int run = 0; run < RUNS; run++) {
        for (int i = 0; i < DELAYS.length; i++) {
          double drivers = delay(new DriversBackend(), "JACK: rig", i + 2);
          double jack = delay(new JackBackend(), "rig", i + 2);
          String where = DELAYS[i] + " samples, run " + run;
          assertEquals(jack, drivers, TOLERANCE, where);
          assertEquals(DELAYS[i], drivers, TOLERANCE, where);
          farthest = Math.max(farthest, Math.abs(drivers - jack));
        }
      }
    }
    System.out.printf(
        "Blocks of %d: %d runs of %d delays, drivers and jack at most %.6f samples apart.%n",
        BLOCK, RUNS, DELAYS.length, farthest);
  }

  /** The first line is the cable; the others are inverted and 12 dB quieter. */
  private static DelayLine[] lines() {
    DelayLine[] lines = new DelayLine[DELAYS.length + 1];
    lines[0] = DelayLine.of(0);
    for (int i = 0; i < DELAYS.length; i++) {
      lines[i + 1] = DelayLine.of(DELAYS[i]).withGain(-0.25);
    }
    return lines;
  }

  private static double delay(AudioBackend backend, String device, int channel)
      throws CaptureException {
    Patching patching = new Patching(new ChannelPair(channel, channel), Optional.of(CABLE));
    SessionRequest request =
        new SessionRequest(
            Optional.of(device),
            Optional.of(device),
            patching.sends(),
            patching.returns(),
            Optional.empty(),
            0);
    try (AudioSession session = backend.open(request)) {
      LiveMeasurement live = new LiveMeasurement(session, patching, PLAN);
      Estimate estimate = live.referenced();
      for (int again = 1; again < TRIES && lostSound(estimate); again++) {
        estimate = live.referenced();
      }
      return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString)
          .measurement()
          .delay()
          .samples();
    }
  }

  private static boolean lostSound(Estimate estimate) {
    return estimate instanceof Estimate.Refused refused
        && refused.findings().stream().anyMatch(f -> f.code() == FindingCode.DROPOUT);
  }
}
