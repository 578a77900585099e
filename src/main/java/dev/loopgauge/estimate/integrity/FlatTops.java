package dev.loopgauge.estimate.integrity;

import dev.loopgauge.signal.Samples;

/** Counts the samples of a channel that lie in flat tops at its peak, in one pass. */
final class FlatTops {
  /** This many equal samples in a row may be a flat top. */
  private static final int FLAT_TOP = 3;

  /** A flat top breaks off by more than this share of the peak; a low tone's crest doesn't. */
  private static final double BREAK = 2e-4;

  private static final double SAME = 1e-6;
  private static final int CHUNK = 1 << 12;

  private double peak;
  private long flat;
  private int run;
  private double previous;
  private boolean steep;

  private FlatTops() {}

  /** The share of a channel's samples that lie in flat tops, 0 to 1. */
  static double share(Samples samples) {
    FlatTops tops = new FlatTops();
    double[] chunk = new double[Math.min(CHUNK, samples.length())];
    for (int from = 0; from < samples.length(); from += chunk.length) {
      int count = Math.min(chunk.length, samples.length() - from);
      samples.copyTo(from, chunk, 0, count);
      for (int i = 0; i < count; i++) {
        tops.add(chunk[i]);
      }
    }
    return (double) tops.flat / samples.length();
  }

  private void add(double sample) {
    double step = Math.abs(sample - previous);
    if (step <= SAME * Math.abs(previous)) {
      run++;
    } else {
      endRun(step);
      run = 1;
      steep = step > BREAK * Math.abs(sample);
    }
    previous = sample;
  }

  /** Counts the run that ends here if it is a flat top; a higher top makes lower ones void. */
  private void endRun(double step) {
    double top = Math.abs(previous);
    if (top > peak * (1 + SAME)) {
      peak = top;
      flat = 0;
    }
    boolean atPeak = top >= peak * (1 - SAME);
    if (run >= FLAT_TOP && atPeak && steep && step > BREAK * top) {
      flat += run;
    }
  }
}
