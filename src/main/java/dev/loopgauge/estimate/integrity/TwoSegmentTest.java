package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import java.util.Optional;

/**
 * Tells whether a return holds one arrival of its reference up to an instant and another one, and
 * only that, from there on. The instant is where the two explain the most; on each side both
 * arrivals are fitted at once, and the one that doesn't belong there must come out as next to
 * nothing.
 */
final class TwoSegmentTest {
  private static final double WINDOW_SECONDS = 0.0025;

  /** The shortest side, in windows. */
  private static final int SHORTEST = 12;

  /** The most of the arrival that doesn't belong to a side, against the one that does. */
  private static final double STRAY = 0.3;

  /** The arrivals must be alike in level to within this factor. */
  private static final double SAME_LEVEL = 2;

  /** The least share of a side that its arrival explains. */
  private static final double EXPLAINED = 0.1;

  private final int window;
  private final double[][] sums;

  private TwoSegmentTest(int window, double[][] sums) {
    this.window = window;
    this.sums = sums;
  }

  /**
   * The instant, as a sample of the return.
   *
   * @param before the delay of the arrival before it
   * @param after the delay of the arrival after it
   */
  static Optional<Integer> split(Reading reading, int before, int after) {
    int from = Math.min(before, after);
    int length = reading.reference().length() + Math.abs(before - after);
    double[] one = new double[length];
    double[] other = new double[length];
    double[] ret = new double[length];
    reading.reference().copyTo(from - before, one, 0, length);
    reading.reference().copyTo(from - after, other, 0, length);
    reading.ret().copyTo(from, ret, 0, length);
    int window = reading.rate().samplesIn(WINDOW_SECONDS);
    return new TwoSegmentTest(window, sums(one, other, ret, window)).instant().map(at -> from + at);
  }

  /** The sums of all products up to each window: aa, bb, ab, ay, by, yy. */
  private static double[][] sums(double[] a, double[] b, double[] y, int window) {
    int count = a.length / window;
    double[][] sums = new double[count + 1][6];
    for (int w = 0; w < count; w++) {
      double[] sum = sums[w].clone();
      for (int i = w * window; i < (w + 1) * window; i++) {
        sum[0] += a[i] * a[i];
        sum[1] += b[i] * b[i];
        sum[2] += a[i] * b[i];
        sum[3] += a[i] * y[i];
        sum[4] += b[i] * y[i];
        sum[5] += y[i] * y[i];
      }
      sums[w + 1] = sum;
    }
    return sums;
  }

  private Optional<Integer> instant() {
    int end = sums.length - 1;
    int best = -1;
    double most = 0;
    for (int w = SHORTEST; w + SHORTEST <= end; w++) {
      double before = sum(0, w, 3) * Math.abs(sum(0, w, 3)) / sum(0, w, 0);
      double after = sum(w, end, 4) * Math.abs(sum(w, end, 4)) / sum(w, end, 1);
      double explained = Math.abs(before) + Math.abs(after);
      if (explained > most && before * after > 0) {
        most = explained;
        best = w;
      }
    }
    return best > 0 && spliced(best, end) ? Optional.of(best * window) : Optional.empty();
  }

  private boolean spliced(int at, int end) {
    double[] before = gains(0, at);
    double[] after = gains(at, end);
    double level = Math.abs(before[0] / after[1]);
    return Math.abs(before[1]) < STRAY * Math.abs(before[0])
        && Math.abs(after[0]) < STRAY * Math.abs(after[1])
        && level < SAME_LEVEL
        && level > 1 / SAME_LEVEL
        && before[0] * sum(0, at, 3) > EXPLAINED * sum(0, at, 5)
        && after[1] * sum(at, end, 4) > EXPLAINED * sum(at, end, 5);
  }

  /** The gains of both arrivals over some windows, by least squares. */
  private double[] gains(int from, int to) {
    double aa = sum(from, to, 0);
    double bb = sum(from, to, 1);
    double ab = sum(from, to, 2);
    double ay = sum(from, to, 3);
    double by = sum(from, to, 4);
    double determinant = aa * bb - ab * ab;
    return new double[] {(ay * bb - by * ab) / determinant, (by * aa - ay * ab) / determinant};
  }

  private double sum(int from, int to, int part) {
    return sums[to][part] - sums[from][part];
  }
}
