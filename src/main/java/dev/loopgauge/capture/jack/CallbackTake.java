package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.nio.FloatBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A take while it runs. The server's two callbacks move sound between it and their ports, each
 * block to the frames that the server's clock gives it; the measuring thread looks on. Moving sound
 * allocates nothing.
 */
final class CallbackTake implements Running {
  private static final long NOT_STARTED = -1;
  private static final int BLOCKS_AHEAD = 2;

  private final int frames;
  private final float[][] sends;
  private final float[][] returns;
  private final AtomicLong start = new AtomicLong(NOT_STARTED);
  private final TakeProgress played;
  private final TakeProgress recorded;
  private final List<Incident> incidents = new ArrayList<>();
  private final List<Integer> xruns = new ArrayList<>();

  CallbackTake(Take take, int returnCount) {
    frames = take.frames();
    sends = new float[take.sends().size()][];
    for (int i = 0; i < sends.length; i++) {
      sends[i] = samples(take.sends().get(i), frames);
    }
    returns = new float[returnCount][frames];
    played = new TakeProgress(frames);
    recorded = new TakeProgress(frames);
  }

  private static float[] samples(Signal signal, int frames) {
    float[] samples = new float[Math.min(frames, signal.length())];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) signal.at(i);
    }
    return samples;
  }

  /**
   * The frame of the take with which a block begins; negative before the take. The first callback
   * to ask sets the start, a little ahead, so that the other hasn't missed it.
   *
   * @param blockTime the server's frame clock at the start of the block, 32 bits unsigned
   * @param block samples in the block
   */
  int frameAt(long blockTime, int block) {
    if (start.get() == NOT_STARTED) {
      long ahead = blockTime + (long) BLOCKS_AHEAD * block;
      start.compareAndSet(NOT_STARTED, ahead & 0xFFFF_FFFFL);
    }
    // Right across the clock's overflow too: the difference is taken in 32 bits.
    return (int) (blockTime - start.get());
  }

  @Override
  public void play(long time, int block, ServerPort[] ports, int length) {
    int frame = frameAt(time, block);
    for (int i = 0; i < ports.length; i++) {
      play(i, frame, ports[i].block(length), length);
    }
    played.block(frame, length);
  }

  @Override
  public void record(long time, int block, ServerPort[] ports, int length) {
    int frame = frameAt(time, block);
    for (int i = 0; i < ports.length; i++) {
      record(i, frame, ports[i].block(length), length);
    }
    recorded.block(frame, length);
  }

  /** Writes a send's part of a block; where the take has nothing, it leaves the port as it is. */
  void play(int send, int frame, FloatBuffer port, int block) {
    int from = Math.max(frame, 0);
    int to = Math.min(frame + block, sends[send].length);
    if (from < to) {
      port.put(from - frame, sends[send], from, to - from);
    }
  }

  /** Reads a return's part of a block. */
  void record(int channel, int frame, FloatBuffer port, int block) {
    int from = Math.max(frame, 0);
    int to = Math.min(frame + block, frames);
    if (from < to) {
      port.get(from - frame, returns[channel], from, to - from);
    }
  }

  TakeProgress played() {
    return played;
  }

  TakeProgress recorded() {
    return recorded;
  }

  boolean isComplete() {
    return played.frames() == frames && recorded.frames() == frames;
  }

  /** The recording, filled up to {@link #recorded}. */
  float[][] returns() {
    return returns;
  }

  List<Signal> recording(SampleRate rate) {
    List<Signal> signals = new ArrayList<>();
    for (float[] channel : returns) {
      signals.add(Signal.of(rate, channel));
    }
    return signals;
  }

  @Override
  public void xrun() {
    xruns.add(frameNow());
  }

  @Override
  public void blockSizeChanged(int from, int to) {
    incidents.add(
        new Incident(
            Incident.Kind.BLOCK_SIZE_CHANGED,
            frameNow(),
            "The audio server's block size changed from %d to %d samples.".formatted(from, to)));
  }

  private int frameNow() {
    return Math.min(recorded.frames(), frames - 1);
  }

  /** What happened so far, most telling first. */
  List<Incident> incidents() {
    List<Incident> all = new ArrayList<>(incidents);
    addStray(all, "played", played);
    addStray(all, "recorded", recorded);
    for (int frame : xruns) {
      all.add(new Incident(Incident.Kind.DROPOUT, frame, "The audio server lost time (xrun)."));
    }
    return all;
  }

  private static void addStray(List<Incident> all, String side, TakeProgress progress) {
    for (int i = 0; i < progress.strays(); i++) {
      int length = progress.strayLength(i);
      all.add(
          new Incident(
              Incident.Kind.DROPOUT,
              progress.strayFrom(i),
              length,
              "%d frames were left out or %s twice.".formatted(length, side)));
    }
  }
}
