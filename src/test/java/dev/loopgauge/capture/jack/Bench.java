package dev.loopgauge.capture.jack;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Click;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jaudiolibs.jnajack.Jack;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackException;
import org.jaudiolibs.jnajack.JackOptions;

/**
 * A server at 48 kHz with a rig of known delay on it.
 *
 * @param server the server
 * @param rig the client {@code rig}, one channel for each line
 */
record Bench(AudioServer server, DelayClient rig) implements AutoCloseable {
  static final SampleRate RATE = new SampleRate(48_000);

  static Bench start(Cycles cycles, int blockSize, DelayLine... lines) throws IOException {
    AudioServer server = AudioServer.start(cycles, RATE.hertz(), blockSize);
    try {
      return new Bench(server, DelayClient.start(server, "rig", lines));
    } catch (IOException e) {
      server.close();
      throw e;
    }
  }

  /** Opens the rig's channels 1 to {@code count}. */
  JackSession open(int count) throws CaptureException {
    return new JackBackend().open(request("rig", count));
  }

  /** Patches two ports of the rig to each other. */
  void patch(String from, String to) throws JackException {
    Jack jack = Jack.getInstance();
    JackClient client = jack.openClient("patch", EnumSet.of(JackOptions.JackNoStartServer), null);
    jack.connect(client, from, to);
    client.close();
  }

  static SessionRequest request(String client, int count) {
    List<Integer> channels = IntStream.rangeClosed(1, count).boxed().toList();
    return new SessionRequest(
        Optional.of(client), Optional.of(client), channels, channels, Optional.empty(), 0);
  }

  /** A click at -20 dBFS on each of {@code count} sends, then silence. */
  static Take clicks(int count, double seconds) {
    Signal click = new Click(0.01).render(RATE).times(0.1);
    return new Take(Collections.nCopies(count, click), RATE.samplesIn(seconds), List.of());
  }

  /**
   * A capture with no incident. On a busy machine the server now and then loses time in earnest,
   * and says so; then the take is repeated, as an engineer would.
   */
  static Capture cleanCapture(JackSession session, Take take) throws CaptureException {
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
