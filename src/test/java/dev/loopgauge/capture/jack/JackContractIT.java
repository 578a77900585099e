package dev.loopgauge.capture.jack;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.SessionContract;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Timeout;

/** JACK keeps to what every adapter keeps to, on a real server. */
@NeedsAudioServer
@Timeout(60)
class JackContractIT extends SessionContract {
  private static final int DELAY = 345;

  private static Bench bench;

  @BeforeAll
  static void start() throws Exception {
    bench = Bench.start(Cycles.STRETCH, 512, DelayLine.of(DELAY), DelayLine.of(DELAY));
  }

  @AfterAll
  static void end() {
    bench.close();
  }

  @Override
  protected AudioSession open(int sends, int returns) throws Exception {
    return bench.open(Math.max(sends, returns));
  }

  @Override
  protected int delay() {
    return DELAY;
  }

  @Override
  protected int channels() {
    return 2;
  }
}
