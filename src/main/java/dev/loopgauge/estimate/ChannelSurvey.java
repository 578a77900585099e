package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Samples;

/** What one channel looks like by itself, in one pass: how loud it is, and how much is clipped. */
final class ChannelSurvey {
  /** Below this a channel holds nothing but the last bit of a 24-bit converter, in dBFS rms. */
  private static final double SILENCE_DBFS = -120;

  /** This many equal samples in a row may be a flat top. */
  private static final int FLAT_TOP = 3;

  /** A flat top breaks off by more than this share of the peak; a low tone's crest doesn't. */
  private static final double BREAK = 2e-4;

  private static final double SAME = 1e-6;
  private static final int CHUNK = 1 << 12;

  private double energy;
  private double peak;
  private long flat;
  private int run;
  private double previous;
  private boolean steep;
  private final int length;

  private ChannelSurvey(int length) {
    this.length = length;
  }

  /** Looks through a channel. */
  static ChannelSurvey of(Samples samples) {
    ChannelSurvey survey = new ChannelSurvey(samples.length());
    double[] chunk = new double[Math.min(CHUNK, samples.length())];
    for (int from = 0; from < samples.length(); from += chunk.length) {
      int count = Math.min(chunk.length, samples.length() - from);
      samples.copyTo(from, chunk, 0, count);
      for (int i = 0; i < count; i++) {
        survey.add(chunk[i]);
      }
    }
    return survey;
  }

  private void add(double sample) {
    energy += sample * sample;
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

  /** Whether there is nothing but silence. */
  boolean isSilent() {
    return Decibels.ofPower(energy / length) < SILENCE_DBFS;
  }

  /** The largest magnitude of a sample. */
  double peak() {
    return Math.max(peak, Math.abs(previous));
  }

  /** The sum of the squared samples. */
  double energy() {
    return energy;
  }

  /** The share of samples that lie in flat tops at the peak. */
  double clippedShare() {
    return (double) flat / length;
  }
}
