package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.TakeWatch;
import dev.loopgauge.job.live.WatchRequest;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.screen.state.Doing.Level;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/** How loud each return is while a take grows. Told by the thread that waits for the take. */
final class LevelMeter implements TakeWatch {
  /** No more than three changes a second (WCAG 2.2, 2.3.1: three flashes). */
  static final long LEAST_NANOS = TimeUnit.MILLISECONDS.toNanos(334);

  /** The largest value of 16 bits; converters that clip stop there or above. */
  static final double FULL_SCALE = 32_767 / 32_768.0;

  /** Two steps of 16 bits, root mean square: dither and rounding alone come to 0.5 of a step. */
  static final double SOUND = 2 / 32_768.0;

  private static final int LOWEST_DBFS = -60;

  /** A stream's return counts as silent once nothing was heard on it for so long. */
  private static final double SILENT_SECONDS = WatchRequest.USUAL_WINDOW_SECONDS;

  private final List<String> returns;
  private final Consumer<List<Level>> told;
  private final double[] peaks;
  private final boolean[] clipped;
  private final long[] heardUntil;
  private final long holdFrames;
  private final boolean awaited;
  private List<Boolean> shown;
  private long frames;
  private int seen;
  private boolean untold;
  private long last;

  private LevelMeter(
      List<String> returns, long holdFrames, boolean awaited, Consumer<List<Level>> told) {
    this.returns = List.copyOf(returns);
    this.holdFrames = holdFrames;
    this.awaited = awaited;
    this.shown = Collections.nCopies(returns.size(), true);
    this.told = told;
    peaks = new double[returns.size()];
    clipped = new boolean[returns.size()];
    heardUntil = new long[returns.size()];
    last = System.nanoTime() - LEAST_NANOS;
  }

  /**
   * Of takes: what was heard at any time is heard.
   *
   * @param returns the names of the returns
   * @param awaited whether silence is worth a word
   * @param told gets the levels, at most three times a second
   */
  static LevelMeter ofTakes(List<String> returns, boolean awaited, Consumer<List<Level>> told) {
    return new LevelMeter(returns, Long.MAX_VALUE / 2, awaited, told);
  }

  /**
   * Of a stream: what was heard in the last {@value #SILENT_SECONDS} s is heard.
   *
   * @param returns the names of the returns
   * @param told gets the levels, at most three times a second
   */
  static LevelMeter ofStream(List<String> returns, SampleRate rate, Consumer<List<Level>> told) {
    return new LevelMeter(returns, Math.round(SILENT_SECONDS * rate.hertz()), true, told);
  }

  /** Another take begins, of which these returns are told. */
  void begin(List<Boolean> returnsShown) {
    shown = List.copyOf(returnsShown);
    seen = 0;
  }

  /** The take is over: what was heard last is told. */
  void end() {
    if (untold) {
      tell();
    }
  }

  @Override
  public void recorded(float[][] recorded, int length) {
    if (length > seen) {
      look(recorded, seen, length);
      seen = length;
    }
  }

  /** The next block of a stream, filled up to {@code length}. */
  void block(float[][] block, int length) {
    look(block, 0, length);
  }

  private void look(float[][] sound, int from, int to) {
    frames += to - from;
    for (int i = 0; i < peaks.length; i++) {
      look(i, sound[i], from, to);
    }
    untold = true;
    if (System.nanoTime() - last >= LEAST_NANOS) {
      tell();
    }
  }

  private void look(int index, float[] samples, int from, int to) {
    double peak = 0;
    double sum = 0;
    for (int i = from; i < to; i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
      sum += (double) samples[i] * samples[i];
    }
    peaks[index] = Math.max(peaks[index], peak);
    clipped[index] |= peak >= FULL_SCALE;
    if (Math.sqrt(sum / (to - from)) > SOUND) {
      heardUntil[index] = frames + holdFrames;
    }
  }

  private void tell() {
    last = System.nanoTime();
    untold = false;
    List<Level> levels = new ArrayList<>();
    for (int i = 0; i < peaks.length; i++) {
      if (shown.get(i)) {
        levels.add(level(i));
      }
      peaks[i] = 0;
    }
    told.accept(levels);
  }

  private Level level(int index) {
    double db = peaks[index] > 0 ? Decibels.ofFactor(peaks[index]) : Double.NEGATIVE_INFINITY;
    double shown = Math.max(LOWEST_DBFS, Math.min(0, db));
    String figure =
        db < LOWEST_DBFS ? "below " + LOWEST_DBFS + " dBFS" : Numbers.plain(db, 0) + " dBFS";
    return new Level(
        returns.get(index),
        figure,
        (int) Math.round(100 * (shown - LOWEST_DBFS) / -LOWEST_DBFS),
        clipped[index],
        !awaited || frames < heardUntil[index]);
  }
}
