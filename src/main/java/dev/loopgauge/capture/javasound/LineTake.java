package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.ClockFit;
import dev.loopgauge.capture.FeedbackGuard;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A take laid onto a session's stream: from one frame of the stream on, its sends are played and
 * its returns are cut out. Guarded by the lock of its {@link Duplex}.
 */
final class LineTake {
  private final Take take;
  private final SampleRate rate;
  private final List<Integer> sends;
  private final List<Integer> returns;
  private final float[][] recorded;
  private final FeedbackGuard guard;
  private final ClockFit fit;
  private long start;
  private volatile int frames;
  private int clean;

  /**
   * A take of one session.
   *
   * @param sends the channels of the output line, counted from 1, for the take's signals
   * @param returns the channels of the input line, counted from 1
   */
  LineTake(Take take, SampleRate rate, List<Integer> sends, List<Integer> returns) {
    this.take = take;
    this.rate = rate;
    this.sends = sends;
    this.returns = returns;
    this.recorded = new float[returns.size()][take.frames()];
    this.guard = new FeedbackGuard(take, rate);
    this.fit = new ClockFit(rate, take.frames());
  }

  /** Lays the take onto the stream. */
  void startAt(long frame) {
    start = frame;
  }

  /** Says up to which frame of the stream nothing was lost. */
  void cleanUpTo(long frame) {
    clean = (int) Math.max(0, Math.min(frame - start, frames));
  }

  /** Lets whoever watches the take see what has been recorded so far. */
  void tellWatch() {
    take.watch().recorded(recorded, frames);
  }

  /** The frame of the stream after its last. */
  long end() {
    return start + take.frames();
  }

  /** Whether all its frames have been recorded. */
  boolean recorded() {
    return frames == take.frames();
  }

  /** Adds what it plays to the silence in a chunk. */
  void play(float[] chunk, int channels, long chunkStart) {
    int length = chunk.length / channels;
    for (int i = 0; i < length; i++) {
      long at = chunkStart + i - start;
      for (int send = 0; at >= 0 && at < take.frames() && send < sends.size(); send++) {
        Signal signal = take.sends().get(send);
        if (at < signal.length()) {
          chunk[i * channels + sends.get(send) - 1] = (float) signal.at((int) at);
        }
      }
    }
  }

  /** Notes when a frame of the stream was seen to have arrived. */
  void arrived(long frame, long nanos) {
    fit.arrived(frame - start, nanos);
  }

  /**
   * Cuts what belongs to it out of a chunk.
   *
   * @return whether a feedback loop is growing
   */
  boolean record(float[] chunk, int channels, long chunkStart) {
    int from = (int) Math.min(Math.max(start - chunkStart, 0), chunk.length / channels);
    int to = (int) Math.max(Math.min(end() - chunkStart, chunk.length / channels), from);
    int before = frames;
    for (int i = from; i < to; i++) {
      for (int channel = 0; channel < recorded.length; channel++) {
        recorded[channel][before + i - from] = chunk[i * channels + returns.get(channel) - 1];
      }
    }
    frames = before + to - from; // One thread alone writes it.
    return to > from && guard.trips(recorded, frames);
  }

  /** What was recorded before frames were lost, as a whole take that is silent from there on. */
  Optional<Capture> beforeLoss(String why) {
    if (clean == 0) {
      return Optional.empty();
    }
    for (float[] channel : recorded) {
      Arrays.fill(channel, clean, channel.length, 0);
    }
    Incident lost = new Incident(Incident.Kind.DROPOUT, clean, take.frames() - clean, why);
    return Optional.of(new Capture(signals(), List.of(lost)));
  }

  /** The finished recording. */
  Capture capture() {
    return new Capture(signals(), List.of(), fit.deviation());
  }

  private List<Signal> signals() {
    List<Signal> signals = new ArrayList<>();
    for (float[] channel : recorded) {
      signals.add(Signal.of(rate, channel));
    }
    return signals;
  }
}
