package dev.loopgauge.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Delays from none to three seconds, through a real server at several rates and block sizes. */
@NeedsAudioServer
@Timeout(120)
@SuppressWarnings("try") // The rig only has to run.
class JackMatrixIT {
  private static final String RIG = "rig";
  private static final ChannelPair CABLE = new ChannelPair(1, 1);
  private static final PlayedStimulus SWEEP = new PlayedStimulus(StimulusKind.SWEEP, 0.3, -20);

  /** On a busy machine the server loses time in earnest; then the measurement is made again. */
  private static final int TRIES = 20;

  /** Two cells in each build, all of them by {@code mvn -B verify -Pfaults}. */
  static Stream<Arguments> cells() {
    if (!"full".equals(System.getProperty("loopgauge.matrix"))) {
      return Stream.of(Arguments.of(44_100, 1_024), Arguments.of(96_000, 2_048));
    }
    return IntStream.of(44_100, 48_000, 96_000)
        .boxed()
        .flatMap(
            rate ->
                IntStream.iterate(64, block -> block <= 2_048, block -> 2 * block)
                    .mapToObj(block -> Arguments.of(rate, block)));
  }

  @ParameterizedTest(name = "{0} Hz, blocks of {1}")
  @MethodSource("cells")
  void eachDelayLiesWithinItsUncertainty(int rate, int block) throws Exception {
    int[] delays = {0, 1, block + 1, 3 * rate};
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, rate, block);
        DelayClient rig = DelayClient.start(server, RIG, lines(delays))) {
      for (int i = 0; i < delays.length; i++) {
        measured(i + 2, delays[i], rate);
      }
    }
  }

  /** The first line is the cable; every other path is inverted and 12 dB quieter. */
  private static DelayLine[] lines(int[] delays) {
    DelayLine[] lines = new DelayLine[delays.length + 1];
    lines[0] = DelayLine.of(0);
    for (int i = 0; i < delays.length; i++) {
      lines[i + 1] = DelayLine.of(delays[i]).withGain(i % 2 == 0 ? 1 : -0.25);
    }
    return lines;
  }

  private static void measured(int channel, int delay, int rate) throws CaptureException {
    ChannelPair path = new ChannelPair(channel, channel);
    MeasurementPlan plan = new MeasurementPlan(SWEEP, 1, 0.1 + (double) delay / rate);
    Patching referenced = new Patching(path, Optional.of(CABLE));
    Measurement found = reading(referenced, plan, true);
    assertDelay(delay, found);
    assertEquals(
        channel % 2 == 0 ? Polarity.NORMAL : Polarity.INVERTED, found.polarity(), "" + channel);
    if (delay == 1) {
      assertDelay(delay, reading(Patching.single(channel, channel), plan, false));
    }
  }

  private static void assertDelay(int delay, Measurement found) {
    double tolerance = Math.max(found.uncertaintySamples(), 1e-3);
    assertEquals(delay, found.delay().samples(), tolerance, found.method() + " of " + delay);
  }

  private static Measurement reading(Patching patching, MeasurementPlan plan, boolean referenced)
      throws CaptureException {
    SessionRequest request =
        new SessionRequest(
            Optional.of(RIG),
            Optional.of(RIG),
            patching.sends(),
            patching.returns(),
            Optional.empty(),
            0);
    try (AudioSession session = new JackBackend().open(request)) {
      LiveMeasurement live = new LiveMeasurement(session, patching, plan);
      Estimate estimate = clean(live, referenced);
      return assertInstanceOf(
              Estimate.Found.class, estimate, () -> patching + ": " + estimate.findings())
          .measurement();
    }
  }

  private static Estimate clean(LiveMeasurement live, boolean referenced) throws CaptureException {
    Estimate estimate = referenced ? live.referenced() : live.withCard();
    for (int again = 1; again < TRIES && lostSound(estimate); again++) {
      estimate = referenced ? live.referenced() : live.withCard();
    }
    return estimate;
  }

  private static boolean lostSound(Estimate estimate) {
    return estimate instanceof Estimate.Refused refused
        && refused.findings().stream().anyMatch(f -> f.code() == FindingCode.DROPOUT);
  }
}
