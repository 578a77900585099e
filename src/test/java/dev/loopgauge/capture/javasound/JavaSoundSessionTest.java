package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.capture.javasound.FakeCard.Fault;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

@Timeout(30)
@Tag("campaign")
class JavaSoundSessionTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final long STALL = 300_000_000L;

  @Test
  void recordsWhatItPlaysAtTheSameOffsetInEachTake() throws Exception {
    try (JavaSoundSession session = open(new FakeCard(777, 0.5f))) {
      Capture first = session.capture(take(20_000));
      int arrival = arrival(first);
      assertTrue(arrival >= 777, "heard before it was played: " + arrival);
      assertEquals(0.5, first.returns().get(0).at(arrival), 0);
      assertEquals(0.25, first.returns().get(0).at(arrival + 1), 0);
      assertEquals(0.125, first.returns().get(0).at(arrival + 4_095), 0);
      for (int take = 0; take < 4; take++) {
        Capture next = session.capture(take(20_000 + take));
        assertEquals(20_000 + take, next.returns().get(0).length());
        assertEquals(arrival, arrival(next), "take " + take);
      }
    }
  }

  @Test
  void statesWhatItOpenedAndThatOffsetsDoNotLast() throws Exception {
    try (JavaSoundSession session = open(new FakeCard(0, 1))) {
      assertEquals("java-sound", session.info().backend());
      assertEquals("fake card", session.info().output());
      assertEquals(FakeCard.BUFFER, session.info().bufferSamples());
      assertFalse(session.info().sampleLocked());
    }
  }

  @ParameterizedTest(name = "{0} {1} is {2}")
  @CsvSource({
    "SEND, MOVES_LESS, SHORT",
    "RETURN, MOVES_LESS, SHORT",
    "SEND, RUNS_OUT, SHORT",
    "RETURN, RUNS_OUT, SHORT",
    "SEND, LOSES_FRAMES, SHORT",
    "RETURN, LOSES_FRAMES, SHORT",
    "SEND, CLOSES, GONE",
    "RETURN, CLOSES, GONE",
    "SEND, THROWS, GONE",
    "RETURN, THROWS, GONE",
    "SEND, STOPS, SHORT",
    "RETURN, STOPS, TIMED_OUT",
    "SEND, BLOCKS_FOR_EVER, TIMED_OUT",
    "RETURN, BLOCKS_FOR_EVER, TIMED_OUT"
  })
  void neverMakesANumberOfAFailure(Direction direction, Fault fault, Kind expected)
      throws Exception {
    FakeCard card = new FakeCard(100, 1);
    try (JavaSoundSession session = open(card)) {
      CompletableFuture<CaptureException> failure =
          CompletableFuture.supplyAsync(
              () -> assertThrows(CaptureException.class, () -> session.capture(take(1_000_000))));
      Thread.sleep(100);
      card.fail(direction, fault);
      // A card that blocks lacks frames too: on a busy machine those may be counted first.
      Kind told = failure.get().kind();
      boolean counted = expected == Kind.TIMED_OUT && told == Kind.SHORT;
      assertTrue(told == expected || counted, () -> failure.join().getMessage());
      CaptureException later =
          assertThrows(CaptureException.class, () -> session.capture(take(1_000)));
      assertEquals(told, later.kind(), "the offset is no longer known");
    }
  }

  @Test
  void tellsWhatTheSoundSystemThrowsInItsOwnWords() throws Exception {
    FakeCard card = new FakeCard(100, 1);
    try (JavaSoundSession session = open(card)) {
      card.fail(Direction.SEND, Fault.THROWS);
      CaptureException e =
          assertThrows(CaptureException.class, () -> session.capture(take(100_000)));
      assertEquals("The sound system failed: thrown by the fake card", e.getMessage());
    }
  }

  @Test
  void failsTheNextTakeWhenFramesAreLostBetweenTakes() throws Exception {
    FakeCard card = new FakeCard(100, 1);
    try (JavaSoundSession session = open(card)) {
      session.capture(take(1_000));
      card.fail(Direction.SEND, Fault.LOSES_FRAMES);
      CaptureException e =
          assertThrows(CaptureException.class, () -> session.capture(take(100_000)));
      assertEquals(Kind.SHORT, e.kind());
    }
  }

  /** Somebody may take a minute to press Enter. */
  @Test
  void startsAnewWhenFramesAreLostBeforeTheFirstTake() throws Exception {
    FakeCard card = new FakeCard(100, 1);
    try (JavaSoundSession session = open(card)) {
      card.fail(Direction.SEND, Fault.LOSES_FRAMES);
      Thread.sleep(500);
      assertEquals(1_000, session.capture(take(1_000)).returns().get(0).length());
    }
  }

  @Test
  void keepsWhatWasRecordedBeforeFramesWereLostAndStartsAnew() throws Exception {
    FakeCard card = new FakeCard(100, 1);
    try (JavaSoundSession session = open(card)) {
      CompletableFuture<CaptureException> failure =
          CompletableFuture.supplyAsync(
              () -> assertThrows(CaptureException.class, () -> session.capture(take(1_000_000))));
      Thread.sleep(1_000);
      card.fail(Direction.SEND, Fault.LOSES_FRAMES);
      Capture before = failure.get().before().orElseThrow();
      Incident lost = before.incidents().get(0);
      assertTrue(lost.frame() > 10_000, lost.toString());
      assertEquals(1_000_000, lost.frame() + lost.frames());
      assertEquals(0, before.returns().get(0).slice(lost.frame(), 1_000_000).peak());
      session.renew();
      assertEquals(1_000, session.capture(take(1_000)).returns().get(0).length());
    }
  }

  @ParameterizedTest
  @EnumSource(Direction.class)
  void aStreamGoesOnAfterALossAndDatesIt(Direction direction) throws Exception {
    FakeCard card = new FakeCard(100, 1);
    List<LostFrames> told = new ArrayList<>();
    try (JavaSoundSession session = open(card)) {
      session.stream(
          new BlockListener() {
            private boolean failed;
            private long due;

            @Override
            public boolean block(long frame, float[][] returns, int length) {
              assertEquals(due, frame);
              due = frame + length;
              if (!failed && frame > 100_000) {
                failed = true;
                card.fail(direction, Fault.LOSES_FRAMES);
              }
              return told.isEmpty() || due < told.get(0).frame() + told.get(0).frames() + 50_000;
            }

            @Override
            public void lost(LostFrames lost) {
              told.add(lost);
              due = lost.frame() + lost.frames();
            }
          });
    }
    assertEquals(1, told.size(), told.toString());
    assertTrue(told.get(0).frame() > 100_000, told.toString());
    assertTrue(told.get(0).text().startsWith("About "), told.toString());
  }

  @Test
  void aStreamEndsWhenTheCardIsGone() throws Exception {
    FakeCard card = new FakeCard(100, 1);
    try (JavaSoundSession session = open(card)) {
      card.fail(Direction.RETURN, Fault.CLOSES);
      CaptureException e =
          assertThrows(CaptureException.class, () -> session.stream(new Endless()));
      assertEquals(Kind.GONE, e.kind());
    }
  }

  /** Never has enough. */
  private static final class Endless implements BlockListener {
    @Override
    public boolean block(long frame, float[][] returns, int length) {
      return true;
    }

    @Override
    public void lost(LostFrames lost) {}
  }

  @Test
  void stopsPlayingWhenAFeedbackLoopGrows() throws Exception {
    try (JavaSoundSession session = open(new FakeCard(0, 1))) {
      double[] growing = new double[48_000];
      for (int i = 0; i < growing.length; i++) {
        growing[i] = 0.01 * Math.pow(10, i / 24_000.0) * Math.sin(0.1 * i);
      }
      Take take =
          new Take(List.of(Signal.of(RATE, growing)), 60_000, List.of(new Take.Segment(0, 60_000)));
      CaptureException e = assertThrows(CaptureException.class, () -> session.capture(take));
      assertEquals(Kind.FEEDBACK, e.kind());
    }
  }

  @Test
  void opensNothingWhenTheCardStandsStill() {
    FakeCard card = new FakeCard(0, 1);
    card.fail(Direction.RETURN, Fault.STOPS);
    assertEquals(Kind.TIMED_OUT, assertThrows(CaptureException.class, () -> open(card)).kind());
  }

  @Test
  void recordsWithoutPlaying() throws Exception {
    FakeCard card = new FakeCard(0, 1);
    OpenLines lines =
        new OpenLines(
            Optional.empty(), card.line(Direction.RETURN, 1), RATE, RateSource.SERVER, true);
    try (JavaSoundSession session =
        JavaSoundSession.start(() -> lines, request(List.of()), STALL)) {
      assertTrue(session.info().alone());
      Capture capture = session.capture(new Take(List.of(), 5_000, List.of()));
      assertEquals(5_000, capture.returns().get(0).length());
    }
  }

  @Test
  void refusesATakeThatDoesNotFit() throws Exception {
    try (JavaSoundSession session = open(new FakeCard(0, 1))) {
      assertThrows(
          IllegalArgumentException.class,
          () -> session.capture(new Take(List.of(), 100, List.of())));
      Signal other = Signal.silence(new SampleRate(44_100), 10);
      assertThrows(
          IllegalArgumentException.class,
          () -> session.capture(new Take(List.of(other), 100, List.of())));
    }
  }

  private static JavaSoundSession open(FakeCard card) throws CaptureException {
    return JavaSoundSession.start(() -> card.lines(RATE), request(List.of(1)), STALL);
  }

  private static SessionRequest request(List<Integer> sends) {
    return new SessionRequest(
        Optional.empty(), Optional.empty(), sends, List.of(1), Optional.of(RATE), 0);
  }

  private static Take take(int frames) {
    double[] stimulus = new double[4_096];
    stimulus[0] = 1;
    stimulus[1] = 0.5;
    stimulus[4_095] = 0.25;
    return new Take(List.of(Signal.of(RATE, stimulus)), frames, List.of());
  }

  private static int arrival(Capture capture) {
    Signal signal = capture.returns().get(0);
    int at = 0;
    while (signal.at(at) == 0) {
      at++;
    }
    return at;
  }
}
