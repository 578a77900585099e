package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/**
 * A sound card in numbers whose sends are patched to its returns through a delay and a gain. It
 * runs by the clock of this computer, only faster, and goes wrong when told to.
 */
final class FakeCard {
  static final int BUFFER = 65_536;
  private static final int FRAMES_PER_SECOND = 192_000;
  private static final int HELD = 1 << 22;

  /** What can go wrong on one line. */
  enum Fault {
    MOVES_LESS,
    BLOCKS_FOR_EVER,
    CLOSES,
    STOPS,
    LOSES_FRAMES,
    RUNS_OUT,
    THROWS
  }

  private final int delay;
  private final float gain;
  private final float[] played = new float[HELD];
  private final long zero = System.nanoTime();
  private long outputStart = Long.MAX_VALUE;
  private Optional<Direction> failing = Optional.empty();
  private Fault fault = Fault.STOPS;
  private long faultAt = Long.MAX_VALUE;

  /** A card whose rig is that many samples late. */
  FakeCard(int delay, float gain) {
    this.delay = delay;
    this.gain = gain;
  }

  /** Lets a line fail from now on. */
  synchronized void fail(Direction direction, Fault what) {
    failing = Optional.of(direction);
    fault = what;
    faultAt = now();
  }

  /** Both lines, as if opened together. */
  OpenLines lines(SampleRate rate) {
    return new OpenLines(
        Optional.of(line(Direction.SEND, 1)),
        line(Direction.RETURN, 1),
        rate,
        RateSource.SERVER,
        false);
  }

  /** One line of that many channels. */
  PcmLine line(Direction direction, int channels) {
    return new FakeLine(direction, channels, BUFFER);
  }

  /** One line with a buffer of that many frames. */
  PcmLine line(Direction direction, int channels, int buffer) {
    return new FakeLine(direction, channels, buffer);
  }

  private long now() {
    return (System.nanoTime() - zero) * FRAMES_PER_SECOND / 1_000_000_000L;
  }

  /** One line; positions are the card's time in frames. */
  private final class FakeLine implements PcmLine {
    private final Direction direction;
    private final int channels;
    private final int buffer;
    private final CountDownLatch closed = new CountDownLatch(1);
    private long started = Long.MAX_VALUE;
    private long moved;

    FakeLine(Direction direction, int channels, int buffer) {
      this.buffer = buffer;
      this.direction = direction;
      this.channels = channels;
    }

    private boolean fails(Fault what) {
      synchronized (FakeCard.this) {
        return fault == what && failing.isPresent() && failing.get() == direction;
      }
    }

    @Override
    public String device() {
      return "fake card";
    }

    @Override
    public int channels() {
      return channels;
    }

    @Override
    public int bufferFrames() {
      return buffer;
    }

    @Override
    public void start() {
      started = now();
      if (direction == Direction.SEND) {
        outputStart = started;
      }
    }

    @Override
    public int ready() {
      if (fails(Fault.RUNS_OUT)) {
        return buffer;
      }
      long waiting = direction == Direction.SEND ? moved - position() : position() - moved;
      return (int) (direction == Direction.SEND ? buffer - waiting : waiting);
    }

    @Override
    public long position() {
      long at = fails(Fault.STOPS) ? faultAt : now();
      long lost = fails(Fault.LOSES_FRAMES) ? 500 : 0;
      return Math.max(at - started - lost, 0);
    }

    @Override
    public int move(float[] interleaved) {
      if (fails(Fault.BLOCKS_FOR_EVER)) {
        awaitClose();
      }
      if (fails(Fault.THROWS)) {
        throw new IllegalStateException("thrown by the fake card");
      }
      int asked = interleaved.length / channels;
      int frames = fails(Fault.MOVES_LESS) ? asked - 1 : asked;
      for (int i = 0; i < frames * channels; i++) {
        if (direction == Direction.SEND) {
          played[(int) moved * channels + i] = interleaved[i];
        } else {
          interleaved[i] = heard((started + moved - outputStart - delay) * channels + i);
        }
      }
      moved += frames;
      return frames;
    }

    private float heard(long index) {
      return index < 0 || index >= HELD ? 0 : gain * played[(int) index];
    }

    private void awaitClose() {
      try {
        closed.await();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    @Override
    public boolean isOpen() {
      return closed.getCount() > 0 && !fails(Fault.CLOSES);
    }

    @Override
    public void close() {
      closed.countDown();
    }
  }
}
