package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * The delays that sound may have before and after a cut.
 *
 * @param before in whole samples
 * @param after in whole samples
 */
public record Sides(int before, int after) {
  /** The shortest part that is looked at by itself is a half, halved so often. */
  private static final int HALVINGS = 4;

  /**
   * Where the delay steps once, the one that was measured is that of the louder side, and the other
   * that of the first part of the reference, or of its last: of a half, a quarter, and so on, since
   * nobody knows where the step is.
   *
   * @param delay that was measured
   * @param furthest how far from it the other is looked for, in samples
   */
  public static Set<Sides> apart(Reading reading, int delay, int furthest) {
    Set<Sides> apart = new LinkedHashSet<>();
    int length = reading.reference().length();
    for (int i = 1; i <= HALVINGS; i++) {
      int part = length >> i;
      apart.add(new Sides(delay + later(reading, 0, part, delay, furthest), delay));
      apart.add(new Sides(delay, delay + later(reading, length - part, part, delay, furthest)));
    }
    apart.remove(new Sides(delay, delay));
    return apart;
  }

  /** By how much a part is later than a delay, in whole samples; 0 where that can't be told. */
  private static int later(Reading reading, int from, int length, int delay, int furthest) {
    double[] sent = new double[furthest + length];
    double[] heard = new double[length + 2 * furthest];
    reading.reference().copyTo(from, sent, furthest, length);
    reading.ret().copyTo(from + delay - furthest, heard, 0, heard.length);
    return (int) Math.rint(DelaySeries.peak(sent, heard, furthest).orElse(0));
  }

  /** The sample of the return before which one delay explains it best, and from which the other. */
  public int change(Reading reading) {
    int from = Math.min(before, after);
    int length = reading.reference().length() + Math.abs(before - after);
    double[] one = new double[length];
    double[] other = new double[length];
    double[] ret = new double[length];
    reading.reference().copyTo(from - before, one, 0, length);
    reading.reference().copyTo(from - after, other, 0, length);
    reading.ret().copyTo(from, ret, 0, length);
    double all = 0;
    double sum = 0;
    double most = 0;
    int change = 0;
    for (int i = 0; i < length; i++) {
      all += other[i] * ret[i];
    }
    for (int i = 0; i < length; i++) {
      sum += (one[i] - other[i]) * ret[i];
      if (Math.abs(all + sum) > Math.abs(most)) {
        most = all + sum;
        change = i + 1;
      }
    }
    return from + change;
  }
}
