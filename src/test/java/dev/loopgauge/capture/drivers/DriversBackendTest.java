package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class DriversBackendTest {
  private final FakeDrivers drivers =
      new FakeDrivers(0)
          .with("ASIO", FakeDrivers.device("ASIO", "Stage card", 32, 32, true))
          .with(
              "WASAPI",
              FakeDrivers.device("WASAPI", "Speaker", 2, 0, false),
              FakeDrivers.device("WASAPI", "Microphone", 0, 1, false))
          .withBusy("ALSA", "hw", "Device or resource busy");
  private final DriversBackend backend = new DriversBackend(new DriverThread(() -> drivers));

  @Test
  void listsDevicesWithTheirDriverAndHowTheyCount() {
    List<AudioDevice> devices =
        assertInstanceOf(Availability.Usable.class, backend.look()).devices();
    assertEquals(
        List.of(
            AudioDevice.uncounted("ASIO: Stage card", RateSource.DEVICE, true),
            new AudioDevice(
                "WASAPI: Speaker", 2, 0, List.of(FakeDrivers.RATE), RateSource.DEVICE, false),
            new AudioDevice(
                "WASAPI: Microphone", 0, 1, List.of(FakeDrivers.RATE), RateSource.DEVICE, false)),
        devices);
  }

  @Test
  void opensWhatOneProgramHasAloneOnlyToCountItOrToMeasure() throws Exception {
    var usable = assertInstanceOf(Availability.Usable.class, backend.look());
    backend.takenAlone(request(Optional.empty(), Optional.empty(), 1));
    backend.takenAlone(request(Optional.of("ASIO: Stage card"), Optional.empty(), 1));
    AudioDevice speaker = usable.devices().get(1);
    assertEquals(speaker, backend.counted(speaker));
    assertEquals(List.of(), drivers.counted());

    assertEquals(
        new AudioDevice(
            "ASIO: Stage card", 32, 32, List.of(FakeDrivers.RATE), RateSource.DEVICE, true),
        backend.counted(usable.devices().get(0)));
    assertEquals(List.of("ASIO: Stage card"), drivers.counted());
    var gone = AudioDevice.uncounted("ASIO: Desk", RateSource.DEVICE, true);
    assertEquals(
        Kind.NO_SUCH_DEVICE,
        assertThrows(CaptureException.class, () -> backend.counted(gone)).kind());
  }

  /** What is shared is sure to play and record; what isn't would have to be opened to know. */
  @Test
  void takesASharedDeviceFirstWhereADriverHasBoth() throws Exception {
    FakeDrivers both =
        new FakeDrivers(0)
            .with(
                "ALSA",
                FakeDrivers.device("ALSA", "hw", 2, 2, true),
                FakeDrivers.device("ALSA", "default", 2, 2, false));
    var alsa = new DriversBackend(new DriverThread(() -> both));
    SessionRequest first = request(Optional.empty(), Optional.empty(), 1);
    assertEquals(Optional.empty(), alsa.takenAlone(first));
    try (AudioSession session = alsa.open(first)) {
      assertEquals("ALSA: default", session.info().input());
    }
    assertEquals(List.of(), both.counted());
  }

  @Test
  void saysWhyNothingCanBeUsed() {
    var unusable =
        assertInstanceOf(
            Availability.Unusable.class,
            new DriversBackend(
                    new DriverThread(() -> new FakeDrivers(0).with("ASIO").with("WASAPI")))
                .look());
    assertEquals(
        "No driver here has a device that opens. ASIO: no device opens. WASAPI: no device opens.",
        unusable.reason());
  }

  @Test
  void takesTheFirstDriverThatDoesBothWhenNothingIsNamed() throws Exception {
    try (AudioSession session = backend.open(request(Optional.empty(), Optional.empty(), 32))) {
      assertEquals("ASIO: Stage card", session.info().output());
      assertEquals("ASIO: Stage card", session.info().input());
      assertTrue(session.info().sampleLocked());
    }
  }

  @Test
  void saysWhichDeviceItTakesFromOtherPrograms() throws Exception {
    SessionRequest first = request(Optional.empty(), Optional.empty(), 1);
    assertEquals(Optional.of("ASIO: Stage card"), backend.takenAlone(first));
    SessionRequest named = request(Optional.of("asio: stage card"), Optional.empty(), 1);
    assertEquals(Optional.of("ASIO: Stage card"), backend.takenAlone(named));
    try (AudioSession session = backend.open(named)) {
      assertTrue(session.info().alone());
    }
    SessionRequest shared =
        request(Optional.of("WASAPI: Speaker"), Optional.of("WASAPI: Microphone"), 1);
    assertEquals(Optional.empty(), backend.takenAlone(shared));
    try (AudioSession session = backend.open(shared)) {
      assertFalse(session.info().alone());
    }
    assertEquals(
        Optional.empty(),
        backend.takenAlone(request(Optional.of("ASIO: Desk"), Optional.empty(), 1)));
  }

  @Test
  void oneNamedDeviceServesBothWays() throws Exception {
    try (AudioSession session =
        backend.open(request(Optional.of("asio: stage card"), Optional.empty(), 1))) {
      assertEquals("ASIO: Stage card", session.info().input());
    }
    assertEquals(List.of(0), drivers.plans().get(0).returns().channels());
  }

  @Test
  void twoDevicesOfADriverAreNotSampleLocked() throws Exception {
    try (AudioSession session =
        backend.open(
            request(Optional.of("WASAPI: Speaker"), Optional.of("WASAPI: Microphone"), 1))) {
      assertFalse(session.info().sampleLocked());
    }
  }

  @Test
  void refusesADeviceThatIsNotThere() {
    var refused = refused(Optional.of("ASIO: Desk"), Optional.empty(), 1);
    assertEquals(Kind.NO_SUCH_DEVICE, refused.kind());
    assertEquals(
        "No device is called \"ASIO: Desk\"; to record from there is \"ASIO: Stage card\".",
        refused.getMessage());
    var noDriver = refused(Optional.of("Stage card"), Optional.empty(), 1);
    assertEquals(
        "\"Stage card\" doesn't begin with a driver; here there are ASIO, WASAPI, ALSA.",
        noDriver.getMessage());
  }

  @Test
  void saysWhyADeviceThatIsThereDoesNotOpen() {
    var busy = refused(Optional.of("ALSA: hw"), Optional.empty(), 1);
    assertEquals(Kind.BUSY, busy.kind());
    assertEquals("\"ALSA: hw\" doesn't open: Device or resource busy.", busy.getMessage());
  }

  @Test
  void saysHowManyChannelsThereAre() {
    var refused = refused(Optional.of("ASIO: Stage card"), Optional.empty(), 33);
    assertEquals(Kind.TOO_FEW_CHANNELS, refused.kind());
    assertEquals("There is no send 33: \"ASIO: Stage card\" has 32 sends.", refused.getMessage());
  }

  @Test
  void refusesARateAtWhichALayerWouldConvert() throws Exception {
    SampleRate asked = new SampleRate(32_000);
    var refused =
        assertThrows(CaptureException.class, () -> backendAt(FakeDrivers.RATE).open(at(asked)));
    assertEquals(Kind.UNSUPPORTED_FORMAT, refused.kind());
    assertEquals(
        "\"ALSA: stage\" doesn't run at 32000 Hz; it runs at 48000 Hz.", refused.getMessage());
    try (AudioSession session = backendAt(FakeDrivers.RATE, asked).open(at(asked))) {
      assertEquals(RateSource.SERVER, session.info().rateSource());
    }
  }

  private static DriversBackend backendAt(SampleRate... own) {
    DriverDevice stage =
        FakeDrivers.device("ALSA", "stage", 2, 2, false).runningAt(List.of(own), RateSource.SERVER);
    return new DriversBackend(new DriverThread(() -> new FakeDrivers(0).with("ALSA", stage)));
  }

  private static SessionRequest at(SampleRate rate) {
    Optional<String> name = Optional.of("ALSA: stage");
    return new SessionRequest(name, name, List.of(1), List.of(1), Optional.of(rate), 0);
  }

  /** Two names for one sound may run at different rates; only what both do is sure. */
  @Test
  void joinsWhatPlaysAndWhatRecordsToWhatBothDo() {
    SampleRate other = new SampleRate(96_000);
    DriverDevice plays =
        FakeDrivers.device("ALSA", "stage", 2, 0, false)
            .runningAt(List.of(FakeDrivers.RATE, other), RateSource.DEVICE);
    DriverDevice records =
        FakeDrivers.device("ALSA", "stage", 0, 4, false)
            .runningAt(List.of(FakeDrivers.RATE), RateSource.SERVER);
    DriverDevice both = plays.joinedWith(records);
    assertEquals(List.of(FakeDrivers.RATE), both.own());
    assertEquals(RateSource.DEVICE, both.rateSource());
    assertEquals(2, both.sends().count());
    assertEquals(4, both.returns().count());
  }

  @Test
  void noNativeCodeIsNeededToNameIt() {
    assertEquals("drivers", new DriversBackend().name());
  }

  private CaptureException refused(Optional<String> output, Optional<String> input, int channel) {
    return assertThrows(
        CaptureException.class, () -> backend.open(request(output, input, channel)));
  }

  private static SessionRequest request(
      Optional<String> output, Optional<String> input, int channel) {
    return new SessionRequest(
        output, input, List.of(channel), List.of(channel), Optional.empty(), 0);
  }
}
