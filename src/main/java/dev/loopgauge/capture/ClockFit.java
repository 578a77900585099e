package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import java.util.Arrays;
import java.util.Optional;

/**
 * Fits the frames of a take against the clock of this computer.
 *
 * <p>Frames are seen late by chance, never early. So the take is cut into {@value #PIECES} pieces,
 * the frame seen least late is kept of each, and a straight line is fitted to those eight: its
 * slope is the rate's deviation, the scatter about it the uncertainty (95 %: Student's t of six
 * degrees of freedom, 2.447).
 *
 * <p>A late cycle of a server that stretches time is a step in lateness. It bends the line by up to
 * 1.7 times the uncertainty that it causes (worked out for each place of the step, see {@code
 * ClockFitTest}), so a fit that is uncertain by more than {@value #MOST_UNCERTAIN_PPM} ppm says
 * nothing, and one late cycle can't look like a wrong rate.
 *
 * <p>Memory doesn't grow with the take. Used by one thread at a time.
 */
public final class ClockFit {
  private static final int PIECES = 8;
  private static final double STUDENT = 2.447;
  private static final double MOST_UNCERTAIN_PPM = 250;
  private static final double PPM = 1e6;

  private final SampleRate rate;
  private final long frames;
  private final double[] at = new double[PIECES];
  private final double[] lateness = new double[PIECES];
  private final boolean[] seen = new boolean[PIECES];
  private long firstNanos;
  private boolean started;

  /**
   * A fit of a take.
   *
   * @param frames how long the take is
   */
  public ClockFit(SampleRate rate, long frames) {
    this.rate = rate;
    this.frames = frames;
  }

  /**
   * Notes that a frame has arrived.
   *
   * @param frame counted from the start of the take; one outside of it is left out
   * @param nanos when it was seen, on a clock that never jumps
   */
  public void arrived(long frame, long nanos) {
    if (frame < 0 || frame >= frames) {
      return;
    }
    if (!started) {
      started = true;
      firstNanos = nanos;
    }
    int piece = (int) (frame * PIECES / frames);
    double seconds = (double) frame / rate.hertz();
    double late = (nanos - firstNanos) / 1e9 - seconds;
    if (!seen[piece] || late < lateness[piece]) {
      seen[piece] = true;
      at[piece] = seconds;
      lateness[piece] = late;
    }
  }

  /** How far the rate is off; empty where the frames came too unevenly to say. */
  public Optional<DeviceRate> deviation() {
    for (boolean piece : seen) {
      if (!piece) {
        return Optional.empty();
      }
    }
    double middle = Arrays.stream(at).average().orElseThrow();
    double spread = Arrays.stream(at).map(x -> (x - middle) * (x - middle)).sum();
    double slope = slope(middle, spread);
    double uncertainty = STUDENT * Math.sqrt(scatter(middle, slope) / spread) * PPM;
    return uncertainty <= MOST_UNCERTAIN_PPM
        ? Optional.of(new DeviceRate(-slope / (1 + slope) * PPM, uncertainty))
        : Optional.empty();
  }

  private double slope(double middle, double spread) {
    double sum = 0;
    for (int i = 0; i < PIECES; i++) {
      sum += (at[i] - middle) * lateness[i];
    }
    return sum / spread;
  }

  /** The variance about the line, in s squared. */
  private double scatter(double middle, double slope) {
    double mean = Arrays.stream(lateness).average().orElseThrow();
    double sum = 0;
    for (int i = 0; i < PIECES; i++) {
      double off = lateness[i] - mean - slope * (at[i] - middle);
      sum += off * off;
    }
    return sum / (PIECES - 2);
  }
}
