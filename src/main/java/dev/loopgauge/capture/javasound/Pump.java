package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;

/**
 * Keeps one line moving, a chunk at a time, and never asks it to wait. Used by one thread; only
 * {@link #idleNanos} and {@link #settled} may be asked by others.
 *
 * <p>A buffer that has run dry (playing) or over (recording) shows as one that is ready as a whole,
 * and is a failure: frames were lost.
 */
final class Pump {
  /** The chunk in frames. */
  static final int CHUNK_FRAMES = 256;

  private final PcmLine line;
  private final Direction direction;
  private final Clock clock;
  private final float[] chunk;
  private long waiting;
  private long seenAt;
  private volatile boolean settled;
  private volatile long movedAt;

  /** The time in ns; injected so that tests need not wait. */
  interface Clock {
    long nanoTime();
  }

  Pump(PcmLine line, Direction direction, Clock clock) {
    this.line = line;
    this.direction = direction;
    this.clock = clock;
    this.chunk = new float[CHUNK_FRAMES * line.channels()];
    this.movedAt = clock.nanoTime();
  }

  /** The samples to play next, or those just recorded, interleaved. */
  float[] chunk() {
    return chunk;
  }

  /** Whether the buffer has once been full (playing) or empty (recording). */
  boolean settled() {
    return settled;
  }

  /**
   * Whether a chunk can be moved now.
   *
   * @throws CaptureException when frames were lost, the line is closed, or nothing could be moved
   *     for longer than {@code limitNanos}
   */
  boolean ready(long limitNanos) throws CaptureException {
    int ready = line.ready();
    seenAt = clock.nanoTime();
    waiting = ready;
    if (!line.isOpen()) {
      throw gone();
    }
    if (settled && ready >= line.bufferFrames()) {
      throw overrun();
    }
    if (ready >= CHUNK_FRAMES) {
      return true;
    }
    settled = true;
    if (idleNanos() > limitNanos) {
      throw stalled(limitNanos);
    }
    return false;
  }

  /** How many frames could be moved when that was last asked. */
  long waiting() {
    return waiting;
  }

  /** When it was asked, in ns. */
  long seenAt() {
    return seenAt;
  }

  /** For how long nothing has been moved, in ns. */
  long idleNanos() {
    return clock.nanoTime() - movedAt;
  }

  /**
   * Moves the chunk.
   *
   * @throws CaptureException when the line moves less than that
   */
  void move() throws CaptureException {
    int moved = line.move(chunk);
    if (moved != CHUNK_FRAMES) {
      throw line.isOpen() ? tooFew(moved) : gone();
    }
    movedAt = clock.nanoTime();
  }

  private CaptureException tooFew(int moved) {
    return new CaptureException(
        Kind.SHORT,
        "\"%s\" %s only %d frames of %d."
            .formatted(
                line.device(),
                direction == Direction.SEND ? "played" : "recorded",
                Math.max(moved, 0),
                CHUNK_FRAMES),
        "Measure again; see that the device is still connected.");
  }

  private CaptureException overrun() {
    return new CaptureException(
        Kind.SHORT,
        "The buffer of \"%s\" ran %s, so frames were lost."
            .formatted(line.device(), direction == Direction.SEND ? "dry" : "over"),
        "Close other programs, ask for a larger buffer, and measure again.");
  }

  /** The failure of a line that moves nothing. */
  CaptureException stalled(long limitNanos) {
    return new CaptureException(
        Kind.TIMED_OUT,
        "The sound stopped: \"%s\" has moved no frame for %.1f s."
            .formatted(line.device(), limitNanos / 1e9),
        "See that the device is still connected and its audio server still runs.");
  }

  private CaptureException gone() {
    return new CaptureException(
        Kind.GONE,
        "\"%s\" was closed while sound was flowing.".formatted(line.device()),
        "See that the device is still connected, then measure again.");
  }
}
