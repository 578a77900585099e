package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionContract;
import dev.loopgauge.chain.Chain;
import java.util.List;

/** The built-in rig keeps to what every adapter keeps to. */
class SimulatedContractTest extends SessionContract {
  private static final Chain CHAIN = Rigs.chain();

  @Override
  protected AudioSession open(int sends, int returns) throws CaptureException {
    return new SimulatedBackend(CHAIN, Plugs.of(CHAIN), List.of(), 18, Pace.UNBOUND)
        .open(request(sends, returns));
  }

  /** The first return hears the cable. */
  @Override
  protected int delay() {
    return 0;
  }
}
