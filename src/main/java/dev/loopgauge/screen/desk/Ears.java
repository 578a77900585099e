package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.ForwardedSession;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.screen.state.Doing.Level;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Listens in on all sessions of one job: tells the levels, and ends the sound when it is told to.
 */
final class Ears implements AudioSystem.Tap {
  private final ReturnNames names;
  private final Consumer<List<Level>> levels;
  private volatile Optional<SessionInfo> opened = Optional.empty();
  private volatile boolean stopped;
  private volatile Optional<Instant> heard = Optional.empty();

  /**
   * Tells the levels as they come.
   *
   * @param names what comes back where
   */
  Ears(ReturnNames names, Consumer<List<Level>> levels) {
    this.names = names;
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

  /** When the last frame was recorded of the last take. */
  Optional<Instant> heard() {
    return heard;
  }

  @Override
  public AudioSession on(AudioSession session, SessionRequest request) {
    opened = Optional.of(session.info());
    return new Heard(session, request);
  }

  private CaptureException ended() {
    // The session is still to be closed, which waits for its server.
    Thread.interrupted();
    return new CaptureException(
        CaptureException.Kind.GONE, "Stopped: nothing more is played.", "Measure again.");
  }

  private final class Heard extends ForwardedSession {
    private final SessionRequest request;
    private final List<String> returns;
    private final LevelMeter meter;
    private boolean whole;

    Heard(AudioSession session, SessionRequest request) {
      super(session);
      this.request = request;
      this.returns = request.returns().stream().map(names::of).toList();
      this.meter = LevelMeter.ofTakes(returns, names.isAwaited(), levels);
    }

    @Override
    public Capture capture(Take take) throws CaptureException {
      if (stopped) {
        throw ended();
      }
      whole = false;
      meter.begin(fed(take));
      try {
        return super.capture(take.watchedBy((sound, frames) -> grew(take, sound, frames)));
      } catch (CaptureException e) {
        throw stopped ? ended() : e;
      } finally {
        if (!whole) {
          heard = Optional.of(Instant.now());
        }
        meter.end();
      }
    }

    /** Which returns hear what plays. */
    private List<Boolean> fed(Take take) {
      Set<Integer> playing = new HashSet<>();
      for (int i = 0; i < take.sends().size(); i++) {
        if (take.sends().get(i).peak() > 0) {
          playing.add(request.sends().get(i));
        }
      }
      return request.returns().stream().map(number -> names.isFed(number, playing)).toList();
    }

    private void grew(Take take, float[][] sound, int frames) {
      if (frames >= take.frames() && !whole) {
        heard = Optional.of(Instant.now());
        whole = true;
      }
      take.watch().recorded(sound, frames);
      meter.recorded(sound, frames);
    }

    /** What a stream that is over sounded like says nothing of now. */
    @Override
    public void stream(BlockListener listener) throws CaptureException {
      LevelMeter now = LevelMeter.ofStream(returns, info().rate(), levels);
      try {
        super.stream(new HeardBlocks(listener, now));
      } finally {
        levels.accept(List.of());
      }
    }
  }

  private record HeardBlocks(BlockListener listener, LevelMeter meter) implements BlockListener {
    @Override
    public boolean block(long frame, float[][] sound, int length) {
      meter.block(sound, length);
      return listener.block(frame, sound, length);
    }

    @Override
    public void lost(LostFrames lost) {
      listener.lost(lost);
    }
  }
}
