package dev.loopgauge.estimate.reading;

import dev.loopgauge.signal.Samples;

/**
 * The loudest stretch of some samples.
 *
 * @param from the sample it starts with, to within a step
 * @param energy its energy
 */
public record Loudest(int from, double energy) {
  /**
   * Finds it in one pass.
   *
   * @param length how many samples it has, at most as many as there are
   * @param step what its start is a multiple of
   */
  public static Loudest in(Samples samples, int length, int step) {
    int steps = samples.length() / step;
    int wide = Math.min(length / step, steps);
    double[] energies = new double[steps];
    double[] chunk = new double[step];
    Loudest best = new Loudest(0, 0);
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      samples.copyTo(i * step, chunk, 0, step);
      for (double sample : chunk) {
        energies[i] += sample * sample;
      }
      sum += energies[i] - (i >= wide ? energies[i - wide] : 0);
      if (i >= wide - 1 && sum > best.energy()) {
        int from = (i + 1 - wide) * step;
        best = new Loudest(Math.min(from, samples.length() - length), sum);
      }
    }
    return best;
  }
}
