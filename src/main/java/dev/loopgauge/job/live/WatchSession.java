package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FlowLimit;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.job.StopSign;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The devices of a watch. When they go away it tries again until they are back: a server that is
 * started anew in the interval must not end the watch of the second half.
 *
 * @param asked what to open
 * @param stop ends the trying too
 */
record WatchSession(
    AudioSystem audio,
    AudioBackend backend,
    Optional<String> profile,
    SessionRequest asked,
    StopSign stop) {
  private static final long AGAIN_NANOS = TimeUnit.SECONDS.toNanos(1);

  /**
   * Streams until the listener has enough.
   *
   * @param first the devices, open; they are closed by this
   * @return why it ended otherwise
   */
  Optional<String> until(AudioSession first, Watching watching) {
    Optional<AudioSession> open = Optional.of(first);
    String why = "";
    while (open.isPresent()) {
      long failed;
      try (AudioSession session = open.get()) {
        session.stream(watching);
        return Optional.empty();
      } catch (CaptureException e) {
        why = e.getMessage();
        failed = System.nanoTime();
        watching.fails(why);
      }
      open = again(first, failed, watching);
      if (open.isPresent()) {
        watching.goOnAfter(since(failed));
      }
    }
    return Optional.of(why);
  }

  /** The devices once they open again as they were; empty where somebody has enough first. */
  private Optional<AudioSession> again(AudioSession first, long failed, Watching watching) {
    while (!stop.isAsked()) {
      try {
        pause();
        watching.waits(since(failed));
        AudioSession session = audio.open(backend, profile, asked);
        if (session.info().rate().equals(first.info().rate())) {
          return Optional.of(session);
        }
        session.close();
      } catch (CaptureException e) {
        if (Thread.currentThread().isInterrupted()) {
          return Optional.empty();
        }
      }
    }
    return Optional.empty();
  }

  private static double since(long nanos) {
    return (System.nanoTime() - nanos) / 1e9;
  }

  private void pause() throws CaptureException {
    long until = System.nanoTime() + AGAIN_NANOS;
    while (System.nanoTime() < until && !stop.isAsked()) {
      FlowLimit.pause();
    }
  }
}
