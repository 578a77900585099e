package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;

/**
 * Drivers in numbers: each device patches its sends to its returns through a known delay. Lists and
 * opens what it is told to, and goes wrong when told to.
 */
final class FakeDrivers implements Drivers {
  static final SampleRate RATE = new SampleRate(48_000);
  static final int BLOCK = 64;

  private final Map<String, Listing> listings = new LinkedHashMap<>();
  private final List<FakeStream> streams = new ArrayList<>();
  private final List<StreamPlan> plans = new ArrayList<>();
  private final List<String> counted = new ArrayList<>();
  private final int delay;
  private CountDownLatch hang = new CountDownLatch(0);
  private Optional<Error> breaks = Optional.empty();

  /** Drivers whose rigs are that many samples late. */
  FakeDrivers(int delay) {
    this.delay = delay;
  }

  /** A driver with devices that open. */
  FakeDrivers with(String driver, DriverDevice... devices) {
    listings.put(driver, new Listing(List.of(devices), Map.of()));
    return this;
  }

  /** A driver with one device that doesn't open. */
  FakeDrivers withBusy(String driver, String name, String reason) {
    listings.put(driver, new Listing(List.of(), Map.of(name, reason)));
    return this;
  }

  /** A device of one driver: alone in one callback, or shared with others and in two. */
  static DriverDevice device(String driver, String name, int sends, int returns, boolean duplex) {
    return new DriverDevice(
        driver,
        name,
        ports(name, sends),
        ports(name, returns),
        Optional.of(RATE),
        List.of(),
        RateSource.DEVICE,
        duplex,
        duplex,
        true);
  }

  private static Ports ports(String id, int count) {
    return count == 0 ? Ports.NONE : new Ports(id, IntStream.range(0, count).boxed().toList());
  }

  /** From now on no call comes back until the latch opens. */
  void hang(CountDownLatch until) {
    hang = until;
  }

  /** From now on each listing fails so. */
  void fail(Error error) {
    breaks = Optional.of(error);
  }

  /** The streams that were opened, in order. */
  List<FakeStream> streams() {
    return streams;
  }

  List<StreamPlan> plans() {
    return plans;
  }

  /** The devices to be had alone that were opened to count their channels, in order. */
  List<String> counted() {
    return counted;
  }

  @Override
  public List<String> names() {
    return List.copyOf(listings.keySet());
  }

  @Override
  public Listing list(String driver) throws CaptureException {
    waitIfHung();
    if (breaks.isPresent()) {
      throw breaks.get();
    }
    Listing listing = told(driver);
    if (listing.devices().isEmpty() && listing.hidden().isEmpty()) {
      throw new CaptureException(
          CaptureException.Kind.BACKEND_UNUSABLE, driver + ": no device opens.", "Plug it in.");
    }
    return listing;
  }

  /** What drivers tell without opening what one program has alone. */
  private Listing told(String driver) {
    Listing all = listings.get(driver);
    return new Listing(
        all.devices().stream().map(device -> device.alone() ? uncounted(device) : device).toList(),
        all.hidden());
  }

  private static DriverDevice uncounted(DriverDevice device) {
    return DriverDevice.uncounted(
        device.driver(),
        device.name(),
        Ports.uncounted(device.sends().id()),
        Ports.uncounted(device.returns().id()),
        device.duplex());
  }

  @Override
  public DriverDevice counted(DriverDevice device) {
    if (device.counted()) {
      return device;
    }
    counted.add(device.fullName());
    return listings.get(device.driver()).devices().stream()
        .filter(real -> real.name().equals(device.name()))
        .findFirst()
        .orElseThrow();
  }

  private void waitIfHung() {
    try {
      hang.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public DriverStream open(StreamPlan plan, BlockHandler handler) {
    plans.add(plan);
    FakeStream stream = new FakeStream(plan, handler, delay);
    streams.add(stream);
    return stream;
  }
}
