package dev.loopgauge.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.CalibrationStore.Lookup;
import dev.loopgauge.signal.SampleRate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrationStoreTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final ChannelPair CABLE = new ChannelPair(1, 2);
  private static final Patching SINGLE = Patching.single(1, 2);
  private static final Patching REFERENCED =
      new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 1)));
  private static final SessionInfo OPENED =
      new SessionInfo("jack", "system", "system", RATE, 256, true);
  private static final Instant MAY = Instant.parse("2026-05-01T18:30:00Z");
  private static final Instant JUNE = Instant.parse("2026-06-01T18:30:00Z");

  @TempDir Path folder;
  private CalibrationStore store;

  @BeforeEach
  void open() {
    store = new DataFolder(folder).calibrations();
  }

  @Test
  void findsTheOneThatHolds() throws SetupException {
    Calibration made = Calibration.of(OPENED, SINGLE, 512.25, 0.02, MAY);
    store.save(made);

    assertEquals(new Lookup.Holds(made), store.find(OPENED, CABLE));
  }

  @Test
  void aNewOneTakesThePlaceOfTheOldOne() throws SetupException {
    store.save(Calibration.of(OPENED, SINGLE, 512.25, 0.02, MAY));
    Calibration newer = Calibration.of(OPENED, SINGLE, 511, 0.02, JUNE);
    store.save(newer);

    assertEquals(List.of(newer), store.all());
  }

  @Test
  void refusesWhatWasMadeWithSomethingElse() throws SetupException {
    store.save(Calibration.of(OPENED, SINGLE, 512.25, 0.02, MAY));

    refuses(info("simulated", "system", "system", RATE, 256), "made with jack, not simulated");
    refuses(info("jack", "host", "system", RATE, 256), "made with the output \"system\", not host");
    refuses(info("jack", "system", "host", RATE, 256), "made with the input \"system\", not host");
    refuses(
        info("jack", "system", "system", new SampleRate(96_000), 256),
        "made at 48000 Hz, not 96000");
    refuses(info("jack", "system", "system", RATE, 128), "made at a block of 256 samples, not 128");
    assertTrue(reason(OPENED, new ChannelPair(2, 2)).endsWith("made from send 1, not 2"));
    assertTrue(reason(OPENED, new ChannelPair(1, 1)).endsWith("made to return 2, not 1"));
  }

  @Test
  void saysWhenThereIsNone() throws SetupException {
    assertEquals(new Lookup.Refused("no calibration is kept"), store.find(OPENED, CABLE));
  }

  @Test
  void keepsOneForEachBlockSizeAndDevice() throws SetupException {
    SessionInfo small = info("jack", "system", "system", RATE, 128);
    SessionInfo accented = info("jack", "sÿstem", "system", RATE, 256);
    SessionInfo other = info("jack", "sýstem", "system", RATE, 256);
    for (SessionInfo info : List.of(OPENED, small, accented, other)) {
      store.save(Calibration.of(info, SINGLE, info.bufferSamples() * 2, 0.02, MAY));
    }

    assertEquals(4, store.all().size());
    Calibration expected = Calibration.of(small, SINGLE, 256, 0.02, MAY);
    assertEquals(new Lookup.Holds(expected), store.find(small, CABLE));
  }

  @Test
  void aSkewIsKeptBesideTheCalibrationOfTheSameCable() throws SetupException {
    Calibration card = Calibration.of(OPENED, Patching.single(2, 2), 512.25, 0.02, MAY);
    Calibration skew = Calibration.of(OPENED, REFERENCED, -0.375, 0.02, JUNE);
    store.save(card);
    store.save(skew);

    assertEquals(List.of(skew, card), store.all());
    assertEquals(new Lookup.Holds(card), store.find(OPENED, new ChannelPair(2, 2)));
    assertEquals(Optional.of(skew), skew(OPENED, REFERENCED));
  }

  @Test
  void aSkewHoldsAtAnyBlockSize() throws SetupException {
    Calibration skew = Calibration.of(OPENED, REFERENCED, -0.375, 0.02, JUNE);
    store.save(skew);

    SessionInfo small = info("jack", "system", "system", RATE, 64);
    assertEquals(Optional.of(skew), skew(small, REFERENCED));
    store.save(Calibration.of(small, REFERENCED, -0.25, 0.02, JUNE));
    assertEquals(1, store.all().size());
  }

  @Test
  void aSkewHoldsForNothingElse() throws SetupException {
    store.save(Calibration.of(OPENED, REFERENCED, -0.375, 0.02, JUNE));

    Optional<ChannelPair> reference = REFERENCED.reference();
    for (Patching other :
        List.of(
            Patching.single(2, 2),
            new Patching(new ChannelPair(3, 2), reference),
            new Patching(new ChannelPair(2, 3), reference),
            new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(2, 1))),
            new Patching(new ChannelPair(2, 2), Optional.of(new ChannelPair(1, 3))))) {
      assertEquals(Optional.empty(), skew(OPENED, other), other.toString());
    }
    for (SessionInfo other :
        List.of(
            info("java-sound", "system", "system", RATE, 256),
            info("jack", "other", "system", RATE, 256),
            info("jack", "system", "other", RATE, 256),
            info("jack", "system", "system", new SampleRate(96_000), 256))) {
      assertEquals(Optional.empty(), skew(other, REFERENCED), other.toString());
    }
    assertEquals("no calibration is kept", reason(OPENED, new ChannelPair(2, 2)));
  }

  @Test
  void readsAFileOfAVersionThatKnewNoSkew() throws SetupException, IOException {
    Files.createDirectories(store.folder());
    Files.writeString(
        store.folder().resolve("old.yaml"),
        """
        measured-at: '2026-05-01T18:30:00Z'
        backend: jack
        output: system
        input: system
        sample-rate: 48000
        buffer: 256
        send: 1
        return: 2
        delay-samples: 512.25
        uncertainty-samples: 0.02
        """);

    Calibration made = Calibration.of(OPENED, SINGLE, 512.25, 0.02, MAY);
    assertEquals(new Lookup.Holds(made), store.find(OPENED, CABLE));
  }

  private Optional<Calibration> skew(SessionInfo opened, Patching patching) throws SetupException {
    return CalibrationStore.skew(store.all(), opened, patching);
  }

  @Test
  void aBadFileIsNamedRatherThanPassedOver() throws SetupException, IOException {
    Path file = store.save(Calibration.of(OPENED, SINGLE, 512.25, 0.02, MAY));
    Files.writeString(file, Files.readString(file).replace("512.25", "many"));

    var refused = assertThrows(SetupException.class, () -> store.find(OPENED, CABLE));
    assertTrue(
        refused.getMessage().startsWith(file + ":9: 'delay-samples': expected a number of samples"),
        refused.getMessage());
  }

  private void refuses(SessionInfo opened, String reason) throws SetupException {
    String found = reason(opened, CABLE);
    assertTrue(found.contains(reason), found);
    assertTrue(found.startsWith("the calibration of 2026-05-01"), found);
  }

  private String reason(SessionInfo opened, ChannelPair channels) throws SetupException {
    return ((Lookup.Refused) store.find(opened, channels)).reason();
  }

  private static SessionInfo info(
      String backend, String output, String input, SampleRate rate, int buffer) {
    return new SessionInfo(backend, output, input, rate, buffer, true);
  }
}
