package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * What every adapter that plays keeps to, by takes and by streams. The rig is one send, or several,
 * patched to as many returns, each through the same known delay.
 */
public abstract class SessionContract extends StreamContract {
  private static final int STIMULUS = 1_024;
  private static final long SEED = 18;

  /** What a measurement allows for converters, in s, on top of what the session says. */
  private static final double CONVERTERS = 0.1;

  private static final double LEVEL = 0.25;

  private final double[] noise = new Random(SEED).doubles(STIMULUS, -LEVEL, LEVEL).toArray();

  /** The delay of the rig itself, in samples. */
  protected abstract int delay();

  /** A request for the first channels of the back end's own choice of device. */
  protected static SessionRequest request(int sends, int returns) {
    return new SessionRequest(
        Optional.empty(),
        Optional.empty(),
        firstChannels(sends),
        firstChannels(returns),
        Optional.empty(),
        0);
  }

  private static List<Integer> firstChannels(int count) {
    return IntStream.rangeClosed(1, count).boxed().toList();
  }

  @Test
  public void aTakeIsWholeOnEachReturn() throws Exception {
    try (AudioSession session = open(channels(), channels())) {
      Capture heard = clean(session, take(session, channels(), 30_000));
      assertEquals(channels(), heard.returns().size());
      for (Signal ret : heard.returns()) {
        assertEquals(30_000, ret.length());
        assertEquals(session.info().rate(), ret.rate());
      }
    }
  }

  @Test
  public void whatIsPlayedComesBackEquallyLateInEachTake() throws Exception {
    try (AudioSession session = open(1, 1)) {
      int late = lag(session);
      int latest = session.info().latestSamples() + session.info().rate().samplesIn(CONVERTERS);
      assertTrue(
          late >= delay() && late <= delay() + latest,
          late + " of a rig of " + delay() + ", opened as " + session.info());
      assertEquals(late, lag(session));
      assertEquals(late, lag(session));
    }
  }

  @Test
  public void aTakeThatDoesNotFitIsRefused() throws Exception {
    try (AudioSession session = open(1, 1)) {
      Take twoSends = take(session, 2, 100);
      assertThrows(IllegalArgumentException.class, () -> session.capture(twoSends));
      Signal other = Signal.silence(new SampleRate(22_050), 10);
      Take otherRate = new Take(List.of(other), 100, List.of());
      assertThrows(IllegalArgumentException.class, () -> session.capture(otherRate));
    }
  }

  @Test
  public void theWatchSeesATakeGrowToItsEnd() throws Exception {
    try (AudioSession session = open(1, 1)) {
      List<Integer> seen = new ArrayList<>();
      Take take =
          take(session, 1, 20_000)
              .watchedBy(
                  (returns, frames) -> {
                    assertEquals(1, returns.length);
                    seen.add(frames);
                  });
      session.capture(take);
      assertEquals(seen.stream().sorted().toList(), seen);
      assertEquals(20_000, seen.get(seen.size() - 1));
    }
  }

  @Test
  public void takesAndStreamsFollowEachOther() throws Exception {
    try (AudioSession session = open(1, 1)) {
      int late = lag(session);
      session.stream(new Listener(5_000));
      assertEquals(late, lag(session));
      session.stream(new Listener(5_000));
    }
  }

  @Test
  public void aClosedSessionPlaysNoMore() throws Exception {
    AudioSession session = open(1, 1);
    Take take = take(session, 1, 100);
    session.close();
    assertThrows(Exception.class, () -> session.capture(take));
    session.close();
  }

  /** A take in which nothing was lost; a busy computer gets some more. */
  private static Capture clean(AudioSession session, Take take) throws CaptureException {
    Capture heard = session.capture(take);
    for (int again = 0; again < 20 && !heard.incidents().isEmpty(); again++) {
      heard = session.capture(take);
    }
    assertEquals(List.of(), heard.incidents(), "21 takes in a row lost sound");
    return heard;
  }

  private Take take(AudioSession session, int sends, int frames) {
    Signal sound = Signal.of(session.info().rate(), noise);
    return new Take(Collections.nCopies(sends, sound), frames, List.of());
  }

  /** The lag at which the sum of products with what was played is largest. */
  private int lag(AudioSession session) throws CaptureException {
    double[] heard = clean(session, take(session, 1, 30_000)).returns().get(0).toArray();
    int lag = 0;
    double largest = 0;
    for (int at = 0; at + STIMULUS <= heard.length; at++) {
      double sum = 0;
      for (int i = 0; i < STIMULUS; i++) {
        sum += noise[i] * heard[at + i];
      }
      if (Math.abs(sum) > largest) {
        largest = Math.abs(sum);
        lag = at;
      }
    }
    assertTrue(largest > STIMULUS * LEVEL * LEVEL / 100, "nothing came back");
    return lag;
  }
}
