package dev.loopgauge.capture.drivers;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.SessionContract;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Timeout;

/** The drivers' JACK keeps to what every adapter keeps to, on a real server. */
@NeedsAudioServer
@Timeout(60)
class DriversContractIT extends SessionContract {
  private static final int DELAY = 345;

  private static DriversRig rig;

  @BeforeAll
  static void start() throws Exception {
    rig = DriversRig.start(Cycles.STRETCH, 512, DelayLine.of(DELAY), DelayLine.of(DELAY));
  }

  @AfterAll
  static void end() {
    rig.close();
  }

  @Override
  protected AudioSession open(int sends, int returns) throws Exception {
    return rig.open(Math.max(sends, returns));
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
