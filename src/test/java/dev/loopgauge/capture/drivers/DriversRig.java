package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Click;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A server at 48 kHz with a rig of known delay on it, for the drivers' JACK.
 *
 * @param server the server
 * @param rig the client {@code rig}, one channel for each line
 */
record DriversRig(AudioServer server, DelayClient rig) implements AutoCloseable {
  static final SampleRate RATE = new SampleRate(48_000);
  static final String NAME = "JACK: rig";

  static DriversRig start(Cycles cycles, int blockSize, DelayLine... lines) throws IOException {
    AudioServer server = AudioServer.start(cycles, RATE.hertz(), blockSize);
    try {
      return new DriversRig(server, DelayClient.start(server, "rig", lines));
    } catch (IOException e) {
      server.close();
      throw e;
    }
  }

  /** Opens the rig's channels 1 to {@code count}. */
  AudioSession open(int count) throws CaptureException {
    return open(IntStream.rangeClosed(1, count).boxed().toList());
  }

  /** Opens channels of the rig, in that order. */
  AudioSession open(List<Integer> channels) throws CaptureException {
    return new DriversBackend().open(request(NAME, channels));
  }

  static SessionRequest request(String device, List<Integer> channels) {
    return new SessionRequest(
        Optional.of(device), Optional.of(device), channels, channels, Optional.empty(), 0);
  }

  /** A click at -20 dBFS on each of {@code count} sends, then silence. */
  static Take clicks(int count, double seconds) {
    Signal click = new Click(0.01).render(RATE).times(0.1);
    return new Take(Collections.nCopies(count, click), RATE.samplesIn(seconds), List.of());
  }

  /** A capture with no incident; on a busy machine the server now and then loses time. */
  static Capture cleanCapture(AudioSession session, Take take) throws CaptureException {
    Capture capture = session.capture(take);
    for (int again = 0; again < 20 && !capture.incidents().isEmpty(); again++) {
      capture = session.capture(take);
    }
    assertEquals(List.of(), capture.incidents(), "21 takes in a row lost time");
    return capture;
  }

  @Override
  public void close() {
    rig.close();
    server.close();
  }
}
