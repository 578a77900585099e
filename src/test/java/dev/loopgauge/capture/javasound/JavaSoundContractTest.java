package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionContract;
import dev.loopgauge.signal.SampleRate;

/** Java Sound keeps to what every adapter keeps to, on a card in numbers. */
class JavaSoundContractTest extends SessionContract {
  private static final int DELAY = 345;
  private static final long STALL = 500_000_000L;

  private final FakeCard card = new FakeCard(DELAY, 0.5f);

  @Override
  protected AudioSession open(int sends, int returns) throws CaptureException {
    return JavaSoundSession.start(
        () -> card.lines(new SampleRate(48_000)), request(sends, returns), STALL);
  }

  @Override
  protected int delay() {
    return DELAY;
  }
}
