package dev.loopgauge.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds stretches in which the found copy is missing from the return although it is there before
 * and after: lost blocks.
 *
 * <p>In windows of about 5 ms the return is projected on the copies. A window is lost when less
 * than {@value #LOST} of what its surroundings hold is in it and little else either. It counts only
 * between windows that hold the sound, so that what a filter takes from the start or the end of a
 * sweep is not taken for a loss.
 */
final class LostSound {
  private static final double WINDOW_SECONDS = 0.005;
  private static final double LOST = 0.3;
  private static final double PRESENT = 0.6;
  private static final double LOUD_ENOUGH = 0.05;

  /** How many times the noise's variance a window's copies must hold to be judged. */
  private static final double ABOVE_NOISE = 100;

  private static final int SURROUNDINGS = 40;

  /** Where a window's numbers say where it starts. */
  private static final int STARTS = 4;

  private final int window;
  private final int start;
  private final List<double[]> windows = new ArrayList<>();

  /** A search in one reading. */
  LostSound(Reading reading) {
    this.window = reading.rate().samplesIn(WINDOW_SECONDS);
    this.start = reading.start();
  }

  /**
   * Sound that was lost.
   *
   * @param from where it starts, in samples from the start of the capture
   * @param length for how many samples, to within a window
   */
  record Gap(int from, int length) {}

  /** Looks at one block of a subtraction. */
  void add(Subtraction source) {
    for (int from = 0; from + window <= source.length(); from += window) {
      double copies = 0;
      double product = 0;
      double all = 0;
      double left = 0;
      for (int i = from; i < from + window; i++) {
        copies += source.found(i) * source.found(i);
        product += source.found(i) * source.ret(i);
        all += source.ret(i) * source.ret(i);
        left += (source.ret(i) - source.found(i)) * (source.ret(i) - source.found(i));
      }
      windows.add(new double[] {copies, product, all, left, start + source.start() + from});
    }
  }

  /** This and what comes after it in the same reading. */
  LostSound followedBy(LostSound rest) {
    windows.addAll(rest.windows);
    return this;
  }

  /** The gaps, in their order. */
  List<Gap> gaps() {
    List<Gap> gaps = new ArrayList<>();
    int first = -1;
    boolean soundBefore = false;
    double loudEnough = loudEnough();
    for (int i = 0; i < windows.size(); i++) {
      double share = windows.get(i)[0] < loudEnough ? Double.NaN : share(i);
      if (share < LOST && soundBefore && first < 0) {
        first = i;
      } else if (share > PRESENT) {
        if (first >= 0) {
          int from = (int) windows.get(first)[STARTS];
          gaps.add(new Gap(from, (int) windows.get(i)[STARTS] - from));
        }
        first = -1;
        soundBefore = true;
      }
    }
    return gaps;
  }

  /** The least energy of the copies in a window that can be judged. */
  private double loudEnough() {
    double mean = windows.stream().mapToDouble(w -> w[0]).average().orElse(0);
    double[] left = windows.stream().mapToDouble(w -> w[3]).sorted().toArray();
    double noise = left.length == 0 ? 0 : left[left.length / 2] / window;
    return Math.max(LOUD_ENOUGH * mean, ABOVE_NOISE * noise);
  }

  /** How much of what its surroundings hold is in a window: 1 where all is well. */
  private double share(int index) {
    int from = Math.max(0, index - SURROUNDINGS);
    int to = Math.min(windows.size(), index + SURROUNDINGS + 1);
    double usual = median(from, to, 1);
    double usualAll = median(from, to, 2);
    double[] here = windows.get(index);
    double projected = here[1] / here[0] / usual;
    double loud = here[2] / here[0] / usualAll;
    return Math.max(projected, Math.sqrt(loud));
  }

  private double median(int from, int to, int part) {
    double[] values = new double[to - from];
    Arrays.setAll(values, i -> windows.get(from + i)[part] / windows.get(from + i)[0]);
    Arrays.sort(values);
    return values[values.length / 2];
  }
}
