package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.TakeWatch;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.screen.state.Doing.Level;
import dev.loopgauge.signal.Decibels;
import java.util.ArrayList;
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

  private final List<Integer> returns;
  private final Consumer<List<Level>> told;
  private final double[] peaks;
  private final boolean[] clipped;
  private final boolean[] heard;
  private int seen;
  private boolean untold;
  private long last;

  /**
   * A meter.
   *
   * @param returns the numbers of the returns
   * @param told gets the levels, at most three times a second
   */
  LevelMeter(List<Integer> returns, Consumer<List<Level>> told) {
    this.returns = List.copyOf(returns);
    this.told = told;
    peaks = new double[returns.size()];
    clipped = new boolean[returns.size()];
    heard = new boolean[returns.size()];
    last = System.nanoTime() - LEAST_NANOS;
  }

  /** Another take begins. */
  void begin() {
    seen = 0;
  }

  /** The take is over: what was heard last is told. */
  void end() {
    if (untold) {
      tell();
    }
  }

  @Override
  public void recorded(float[][] recorded, int frames) {
    if (frames <= seen) {
      return;
    }
    for (int i = 0; i < peaks.length; i++) {
      look(i, recorded[i], frames);
    }
    seen = frames;
    untold = true;
    if (System.nanoTime() - last >= LEAST_NANOS) {
      tell();
    }
  }

  private void look(int index, float[] samples, int frames) {
    double peak = 0;
    double sum = 0;
    for (int i = seen; i < frames; i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
      sum += (double) samples[i] * samples[i];
    }
    peaks[index] = Math.max(peaks[index], peak);
    clipped[index] |= peak >= FULL_SCALE;
    heard[index] |= Math.sqrt(sum / (frames - seen)) > SOUND;
  }

  private void tell() {
    last = System.nanoTime();
    untold = false;
    List<Level> levels = new ArrayList<>();
    for (int i = 0; i < peaks.length; i++) {
      levels.add(level(i));
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
        "return " + returns.get(index),
        figure,
        (int) Math.round(100 * (shown - LOWEST_DBFS) / -LOWEST_DBFS),
        clipped[index],
        heard[index]);
  }
}
