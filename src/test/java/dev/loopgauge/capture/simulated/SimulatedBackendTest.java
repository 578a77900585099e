package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SimulatedBackendTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int FRAMES = 6_000;
  private static final int BUFFER = 256;
  private static final double LOOP = 418.4;

  @Test
  void offersOneRigOfTwoSendsAndTwoReturns() {
    Availability offer = backend(1).look();
    assertEquals(new Availability.Usable(List.of(new AudioDevice("rig", 2, 2, List.of()))), offer);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void returnTwoIsLaterThanReturnOneByTheLoop(long seed) throws CaptureException {
    Capture capture = capture(backend(seed));
    int cable = peak(capture.returns().get(0));
    int rig = peak(capture.returns().get(1));
    assertEquals(Math.round(LOOP), rig - cable, "seed " + seed);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void cardIsLateByWholeBuffersThatChangeFromSessionToSession(long seed) throws CaptureException {
    SimulatedBackend backend = backend(seed);
    Set<Integer> delays = new HashSet<>();
    for (int opening = 0; opening < 20; opening++) {
      int delay = peak(capture(backend).returns().get(0));
      assertEquals(12 + 11, delay % BUFFER, "seed " + seed);
      assertTrue(delay >= 2 * BUFFER, "seed " + seed);
      delays.add(delay);
    }
    assertTrue(delays.size() > 1, "seed " + seed);
  }

  @Test
  void cardStaysAsLateWithinASession() throws CaptureException {
    try (AudioSession session = backend(1).open(request(2, 2))) {
      int first = peak(session.capture(click()).returns().get(0));
      for (int take = 0; take < 5; take++) {
        assertEquals(first, peak(session.capture(click()).returns().get(0)), "seed 1");
      }
    }
  }

  @Test
  void sameSeedSameSamples() throws CaptureException {
    SimulatedBackend one = backend(9);
    SimulatedBackend two = backend(9);
    for (int opening = 0; opening < 3; opening++) {
      Capture first = capture(one);
      Capture second = capture(two);
      for (int channel = 0; channel < 2; channel++) {
        double[] expected = first.returns().get(channel).toArray();
        assertArrayEquals(expected, second.returns().get(channel).toArray(), "seed 9");
      }
    }
  }

  @Test
  void takesTheChainsRateUnlessAskedForAnother() throws CaptureException {
    try (AudioSession session = backend(1).open(request(1, 1))) {
      assertEquals(RATE, session.info().rate());
      assertEquals("simulated", session.info().backend());
      assertFalse(session.info().sampleLocked());
    }
    SessionRequest fast =
        new SessionRequest(
            Optional.of("rig"),
            Optional.of("rig"),
            List.of(2),
            List.of(2),
            Optional.of(new SampleRate(96_000)),
            128);
    try (AudioSession session = backend(1).open(fast)) {
      assertEquals(new SampleRate(96_000), session.info().rate());
      assertEquals(128, session.info().bufferSamples());
    }
  }

  @Test
  void refusesDevicesAndChannelsThatThereAreNot() {
    SessionRequest other =
        new SessionRequest(
            Optional.of("card"), Optional.empty(), List.of(1), List.of(1), Optional.empty(), 0);
    assertEquals(CaptureException.Kind.NO_SUCH_DEVICE, refused(other));
    assertEquals(CaptureException.Kind.TOO_FEW_CHANNELS, refused(request(3, 1)));
    assertEquals(CaptureException.Kind.TOO_FEW_CHANNELS, refused(request(1, 3)));
  }

  @Test
  void refusesFaultsInStagesThatThereAreNotBeforeAnythingOpens() {
    assertThrows(FaultFormatException.class, () -> backend(1, "absent=compressor"));
  }

  private static CaptureException.Kind refused(SessionRequest request) {
    return assertThrows(CaptureException.class, () -> backend(1).open(request)).kind();
  }

  private static SimulatedBackend backend(long seed, String... faults) {
    Chain chain = Rigs.chain();
    List<PathFault> parsed =
        List.of(faults).stream().map(text -> PathFault.parse(text, List.of())).toList();
    Plugs plugs = Plugs.measuring(chain, chain.path(Rigs.PATH), Optional.empty());
    return new SimulatedBackend(chain, plugs, parsed, seed, Pace.UNBOUND);
  }

  /** Sends and returns from channel 1 to these. */
  private static SessionRequest request(int sends, int returns) {
    List<Integer> channels = List.of(1, 2, 3);
    return new SessionRequest(
        Optional.empty(),
        Optional.empty(),
        channels.subList(0, sends),
        channels.subList(0, returns),
        Optional.empty(),
        BUFFER);
  }

  private static Capture capture(SimulatedBackend backend) throws CaptureException {
    try (AudioSession session = backend.open(request(2, 2))) {
      return session.capture(click());
    }
  }

  /** One sample of half scale on both sends. */
  private static Take click() {
    Signal click = Signal.of(RATE, 0.5);
    return new Take(List.of(click, click), FRAMES, List.of());
  }

  private static int peak(Signal signal) {
    int peak = 0;
    for (int i = 0; i < signal.length(); i++) {
      peak = Math.abs(signal.at(i)) > Math.abs(signal.at(peak)) ? i : peak;
    }
    return peak;
  }
}
