package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionContract;

/** Drivers keep to what every adapter keeps to, on a driver in numbers. */
class DriversContractTest extends SessionContract {
  private static final int DELAY = 345;

  private final FakeDrivers drivers =
      new FakeDrivers(DELAY).with("ASIO", FakeDrivers.device("ASIO", "Stage card", 2, 2, true));

  @Override
  protected AudioSession open(int sends, int returns) throws CaptureException {
    return new DriversBackend(new DriverThread(() -> drivers)).open(request(sends, returns));
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
