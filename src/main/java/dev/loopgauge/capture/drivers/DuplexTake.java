package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.ClockFit;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A take while it runs: each block plays and records the same frames of it. Frames that the driver
 * left out are left out of both.
 */
final class DuplexTake implements SessionRun {
  /** Enough for a take that has to be played again anyway. */
  private static final int MOST = 256;

  private final int frames;
  private final SampleRate rate;
  private final float[][] sends;
  private final float[][] returns;
  private final ClockFit fit;
  private final int[] lostAt = new int[MOST];
  private final int[] lostFrames = new int[MOST];
  private final List<Incident> told = new ArrayList<>();
  private int losses;
  private int clean;
  private volatile int done;

  DuplexTake(Take take, int returnCount, SampleRate rate) {
    this.frames = take.frames();
    this.rate = rate;
    this.fit = new ClockFit(rate, frames);
    sends = new float[take.sends().size()][];
    for (int i = 0; i < sends.length; i++) {
      sends[i] = samples(take.sends().get(i), frames);
    }
    returns = new float[returnCount][frames];
  }

  private static float[] samples(Signal signal, int frames) {
    float[] samples = new float[Math.min(frames, signal.length())];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) signal.at(i);
    }
    return samples;
  }

  @Override
  public void block(float[][] out, float[][] in, int length, int missed) {
    int from = done;
    if (missed != 0 && from > 0 && from < frames) {
      leaveOut(from, missed);
      from = Math.min(frames, from + Math.max(0, missed));
    }
    for (int i = 0; i < sends.length; i++) {
      int some = Math.max(0, Math.min(length, sends[i].length - from));
      System.arraycopy(sends[i], Math.min(from, sends[i].length), out[i], 0, some);
    }
    int some = Math.min(length, frames - from);
    for (int i = 0; i < returns.length; i++) {
      System.arraycopy(in[i], 0, returns[i], from, some);
    }
    fit.arrived((long) from + some - 1, System.nanoTime());
    done = from + some; // Last, for it makes the rest visible.
  }

  /** The last place takes what no longer has one of its own. */
  private void leaveOut(int at, int missed) {
    int place = Math.min(losses, MOST - 1);
    lostAt[place] = losses < MOST ? at : lostAt[place];
    lostFrames[place] = losses < MOST ? missed : Math.max(at + missed - lostAt[place], 1);
    losses = place + 1;
  }

  @Override
  public void lost() {
    told.add(new Incident(Incident.Kind.DROPOUT, now(), "The driver lost sound (xrun)."));
  }

  @Override
  public void blockSizeChanged(int from, int to) {
    told.add(
        0, // It tells more than what was lost with it.
        new Incident(
            Incident.Kind.BLOCK_SIZE_CHANGED,
            now(),
            "The driver's block size changed from %d to %d samples.".formatted(from, to)));
  }

  private int now() {
    return Math.min(done, frames - 1);
  }

  @Override
  public long progress() {
    return done;
  }

  int done() {
    return done;
  }

  boolean isComplete() {
    return done == frames;
  }

  /** The recording, filled up to {@link #done}. */
  float[][] returns() {
    return returns;
  }

  /** The finished recording. */
  Capture capture() {
    List<Incident> incidents = new ArrayList<>(told);
    for (int i = 0; i < losses; i++) {
      int count = Math.abs(lostFrames[i]);
      String what = lostFrames[i] > 0 ? "were left out." : "came twice.";
      incidents.add(
          new Incident(Incident.Kind.DROPOUT, lostAt[i], count, count + " frames " + what));
    }
    return new Capture(signals(), incidents, fit.deviation());
  }

  /** Says up to which frame nothing was lost; on the measuring thread. */
  void cleanUpTo(int frame) {
    clean = frame;
  }

  /** What was recorded before sound was lost, as a whole take that is silent from there on. */
  Optional<Capture> beforeLoss(String why) {
    if (clean == 0) {
      return Optional.empty();
    }
    for (float[] channel : returns) {
      Arrays.fill(channel, clean, frames, 0);
    }
    Incident lost = new Incident(Incident.Kind.DROPOUT, clean, frames - clean, why);
    return Optional.of(new Capture(signals(), List.of(lost)));
  }

  private List<Signal> signals() {
    List<Signal> signals = new ArrayList<>();
    for (float[] channel : returns) {
      signals.add(Signal.of(rate, channel));
    }
    return signals;
  }
}
