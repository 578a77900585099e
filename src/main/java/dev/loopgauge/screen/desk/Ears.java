package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ForwardedSession;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.capture.TakeWatch;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.screen.state.Doing.Level;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Listens in on all sessions of one job: tells the levels, and ends the sound when it is told to.
 */
final class Ears implements AudioSystem.Tap {
  private final Consumer<List<Level>> levels;
  private volatile Optional<SessionInfo> opened = Optional.empty();
  private volatile boolean stopped;
  private volatile Optional<Instant> heard = Optional.empty();

  /** Tells the levels as they come. */
  Ears(Consumer<List<Level>> levels) {
    this.levels = levels;
  }

  /** No further sound may start; whoever calls it interrupts the job's thread as well. */
  void stop() {
    stopped = true;
  }

  /** Whether it was told to stop. */
  boolean isStopped() {
    return stopped;
  }

  /** What was opened last. */
  Optional<SessionInfo> opened() {
    return opened;
  }

  /** When the last take was over. */
  Optional<Instant> heard() {
    return heard;
  }

  @Override
  public AudioSession on(AudioSession session, SessionRequest request) {
    opened = Optional.of(session.info());
    return new Heard(session, new LevelMeter(request.returns(), levels));
  }

  private CaptureException ended() {
    // The session is still to be closed, which waits for its server.
    Thread.interrupted();
    return new CaptureException(
        CaptureException.Kind.GONE, "Stopped: nothing more is played.", "Measure again.");
  }

  private final class Heard extends ForwardedSession {
    private final LevelMeter meter;

    Heard(AudioSession session, LevelMeter meter) {
      super(session);
      this.meter = meter;
    }

    @Override
    public Capture capture(Take take) throws CaptureException {
      if (stopped) {
        throw ended();
      }
      TakeWatch first = take.watch();
      meter.begin();
      try {
        return super.capture(take.watchedBy((returns, frames) -> both(first, returns, frames)));
      } catch (CaptureException e) {
        throw stopped ? ended() : e;
      } finally {
        heard = Optional.of(Instant.now());
        meter.end();
      }
    }

    private void both(TakeWatch first, float[][] returns, int frames) {
      first.recorded(returns, frames);
      meter.recorded(returns, frames);
    }
  }
}
