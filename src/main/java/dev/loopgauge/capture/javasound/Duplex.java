package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;

/**
 * Sound flowing both ways without a break, from {@link #start} to {@link #close}, on a thread each.
 * Silence is played between takes. The frames played and those recorded carry one count, which
 * starts when playing does: a frame is never heard before it was played.
 *
 * <p>The first failure ends the flow, closes the lines and is thrown to whoever waits or comes
 * later; a new one must be opened then, since the offset is no longer the same.
 */
final class Duplex implements AutoCloseable {
  private static final long POLL_MILLIS = 1;
  private static final long LOOK_MILLIS = 20;
  private static final long CLOSE_MILLIS = 2_000;

  private final OpenLines lines;
  private final Pump recorder;
  private final Optional<Pump> player;
  private final OffsetWatch watch;
  private final long stallNanos;
  private final Thread closer = daemon("close", this::closeLines);

  // Guarded by this.
  private Optional<LineTake> take = Optional.empty();
  private Optional<LineStream> stream = Optional.empty();
  private Optional<CaptureException> failure = Optional.empty();
  private long playedFrom;
  private long played;
  private long recorded;
  private long verified;
  private long lastArrived;
  private boolean ended;

  /**
   * Takes over open lines.
   *
   * @param stallNanos after how many ns without a frame the sound counts as stopped
   */
  Duplex(OpenLines lines, long stallNanos) {
    this.lines = lines;
    this.stallNanos = stallNanos;
    this.recorder = new Pump(lines.input(), Direction.RETURN, System::nanoTime);
    this.player = lines.output().map(line -> new Pump(line, Direction.SEND, System::nanoTime));
    this.watch = new OffsetWatch(lines.rate().hertz());
  }

  /**
   * Starts recording, then playing, and returns when both flow steadily.
   *
   * @throws CaptureException when they don't
   */
  synchronized void start() throws CaptureException {
    lines.input().start();
    daemon("record", () -> run(this::keepRecording)).start();
    await(() -> recorded > 0);
    if (player.isPresent()) {
      played = recorded;
      playedFrom = played;
      lines.output().orElseThrow().start();
      daemon("play", () -> run(() -> keepPlaying(player.get()))).start();
      await(() -> verified > 0);
    }
  }

  /**
   * Plays and records a take, and returns once all of it is recorded and known to be whole.
   *
   * @throws CaptureException when the flow has failed, before or meanwhile
   */
  void run(LineTake next) throws CaptureException {
    begin(next);
    while (!isOver(next)) {
      next.tellWatch();
    }
    next.tellWatch();
  }

  /**
   * Records a stream until its listener has enough.
   *
   * @throws CaptureException when the flow has failed, before or meanwhile
   */
  void run(LineStream next, BlockListener listener) throws CaptureException {
    setStream(Optional.of(next));
    try {
      do {
        waitForMore();
      } while (next.empty(listener));
    } catch (CaptureException e) {
      if (next.empty(listener)) {
        throw e;
      }
    } finally {
      setStream(Optional.empty());
    }
  }

  private synchronized void setStream(Optional<LineStream> next) {
    stream = next;
  }

  private synchronized void begin(LineTake next) {
    next.startAt(Math.max(played, recorded));
    take = Optional.of(next);
  }

  /** Waits a moment for a take to be whole. */
  private synchronized boolean isOver(LineTake next) throws CaptureException {
    boolean over = next.recorded() && (player.isEmpty() || verified >= next.end());
    if (over || failure.isPresent()) {
      take = Optional.empty();
      next.cleanUpTo(player.isEmpty() ? recorded : verified);
    }
    if (over) {
      check();
    } else {
      waitForMore();
    }
    return over;
  }

  /**
   * By how many frames what is played is recorded later, at the most: as far as the device's counts
   * are apart, and a step of each. Known once the flow has started.
   */
  synchronized int latest() {
    return player.isEmpty()
        ? 0
        : (int) Math.max(0, Math.ceil(watch.offset() - playedFrom) + 2 * watch.step());
  }

  /** Whether the flow has ended because frames were lost. */
  synchronized boolean hasLostFrames() {
    return failure.filter(e -> e.kind() == Kind.SHORT).isPresent();
  }

  /** Ends the flow and closes the lines. Never throws; gives up on a line that can't be closed. */
  @Override
  public void close() {
    end(Optional.empty());
    try {
      closer.join(CLOSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized void await(BooleanSupplier done) throws CaptureException {
    while (!done.getAsBoolean()) {
      waitForMore();
    }
    check();
  }

  /** Waits a moment for more sound, and sees that it still flows. */
  @SuppressWarnings("WaitNotInLoop") // Each caller calls it in a loop.
  private synchronized void waitForMore() throws CaptureException {
    watchdog();
    check();
    try {
      wait(LOOK_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      end(failed(Kind.TIMED_OUT, "The take was cancelled.", "Measure again."));
    }
  }

  private synchronized void check() throws CaptureException {
    if (failure.isPresent()) {
      throw failure.get();
    }
  }

  /** Catches what hangs inside the operating system and so can't notice it itself. */
  private void watchdog() {
    if (recorder.idleNanos() > 2 * stallNanos) {
      end(Optional.of(recorder.stalled(2 * stallNanos)));
    }
    if (player.isPresent() && played > 0 && player.get().idleNanos() > 2 * stallNanos) {
      end(Optional.of(player.get().stalled(2 * stallNanos)));
    }
  }

  private synchronized void end(Optional<CaptureException> reason) {
    if (!ended) {
      ended = true;
      failure = reason.or(() -> failed(Kind.GONE, "The session is closed.", "Open another."));
      closer.start();
      notifyAll();
    }
  }

  private void closeLines() {
    lines.output().ifPresent(PcmLine::close);
    lines.input().close();
  }

  private void keepRecording() throws CaptureException, InterruptedException {
    while (!hasEnded()) {
      boolean ready = recorder.ready(stallNanos);
      arrived();
      if (ready) {
        recorder.move();
        heard(recorder.chunk());
      } else {
        Thread.sleep(POLL_MILLIS);
      }
      if (player.isPresent() && player.get().settled()) {
        compare(lines.output().orElseThrow().position(), lines.input().position());
      }
    }
  }

  private void keepPlaying(Pump pump) throws CaptureException, InterruptedException {
    while (!hasEnded()) {
      if (pump.ready(stallNanos)) {
        fill(pump.chunk());
        pump.move();
      } else {
        Thread.sleep(POLL_MILLIS);
      }
    }
  }

  private synchronized boolean hasEnded() {
    return ended;
  }

  private synchronized void fill(float[] chunk) {
    Arrays.fill(chunk, 0);
    int channels = lines.output().orElseThrow().channels();
    take.ifPresent(running -> running.play(chunk, channels, played));
    played += Pump.CHUNK_FRAMES;
  }

  private synchronized void heard(float[] chunk) {
    if (take.isPresent() && take.get().record(chunk, lines.input().channels(), recorded)) {
      end(
          failed(
              Kind.FEEDBACK,
              "The returns grew louder with nothing playing, so playing was stopped.",
              "Turn the send down or break the feedback loop, then measure again."));
    }
    stream.ifPresent(running -> running.record(chunk, lines.input().channels()));
    recorded += Pump.CHUNK_FRAMES;
    notifyAll();
  }

  /** Only frames that are new since the last look were seen the moment they came. */
  private synchronized void arrived() {
    long now = recorded + recorder.waiting();
    if (now > lastArrived) {
      lastArrived = now;
      take.ifPresent(running -> running.arrived(now, recorder.seenAt()));
    }
  }

  private synchronized void compare(long playedByDevice, long recordedByDevice) {
    if (playedByDevice <= 0) {
      return;
    }
    OptionalLong shift = watch.look(playedByDevice, recordedByDevice);
    verified = watch.verified();
    if (shift.isPresent()) {
      end(
          failed(
              Kind.SHORT,
              "About %d frames were lost between \"%s\" and \"%s\"."
                  .formatted(
                      shift.getAsLong(),
                      lines.output().orElseThrow().device(),
                      lines.input().device()),
              "Close other programs, ask for a larger buffer, and measure again."));
    }
  }

  private static Optional<CaptureException> failed(Kind kind, String text, String hint) {
    return Optional.of(new CaptureException(kind, text, hint));
  }

  /** What a thread does until the flow ends. */
  private interface Flow {
    void run() throws CaptureException, InterruptedException;
  }

  private void run(Flow flow) {
    try {
      flow.run();
    } catch (CaptureException e) {
      end(Optional.of(e));
    } catch (InterruptedException | RuntimeException e) {
      String reason = Optional.ofNullable(e.getMessage()).orElse("it gives no reason");
      end(failed(Kind.GONE, "The sound system failed: " + reason, "Measure again."));
    }
  }

  private static Thread daemon(String name, Runnable work) {
    Thread thread = new Thread(work, "java-sound " + name);
    thread.setDaemon(true);
    return thread;
  }
}
