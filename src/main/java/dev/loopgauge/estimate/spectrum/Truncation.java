package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.Samples;

/**
 * Where a reference starts and ends in the midst of sound: the recording was started or stopped
 * there, and the return holds more of the same. A stimulus starts and ends by itself, at full level
 * too, and the return is quiet before and after its arrival.
 */
final class Truncation {
  /** How long a stretch on either side of an edge is looked at, in seconds. */
  private static final double SECONDS = 0.02;

  /** An edge is silent where its power is less than this share of that of the loudest stretch. */
  private static final double SILENT = 1e-4;

  /** What goes on outside is at least this share of what is heard inside. */
  private static final double GOES_ON = 0.25;

  private final Reading reading;
  private final FittedArrival arrival;
  private final int stretch;
  private final double energy;
  private double loudest = -1;

  /**
   * The edges of a reference of which an arrival is in the return.
   *
   * @param energy the energy of all references
   */
  Truncation(Reading reading, FittedArrival arrival, double energy) {
    this.reading = reading;
    this.arrival = arrival;
    this.stretch = reading.rate().samplesIn(SECONDS);
    this.energy = energy;
  }

  /**
   * Whether sound is cut where the recorded part of the arrival starts.
   *
   * @param from the sample of the reference that it starts with
   */
  boolean startCutsSound(int from) {
    int at = from + (int) Math.rint(arrival.lag());
    double inside = power(reading.reference(), from, from + stretch);
    if (from > 0) {
      return goesOn(inside, power(reading.reference(), Math.max(0, from - stretch), from));
    }
    return goesOn(
        inside,
        power(reading.ret(), at, at + stretch),
        powerFar(at, Math.max(at - stretch, reading.recordedFrom())));
  }

  /**
   * Whether sound is cut where the recorded part of the arrival ends.
   *
   * @param to the sample of the reference that it ends before
   */
  boolean endCutsSound(int to) {
    int at = to + (int) Math.rint(arrival.lag());
    double inside = power(reading.reference(), to - stretch, to);
    int end = reading.reference().length();
    if (to < end) {
      return goesOn(inside, power(reading.reference(), to, Math.min(to + stretch, end)));
    }
    return goesOn(
        inside,
        power(reading.ret(), at - stretch, at),
        powerFar(at, Math.min(at + stretch, reading.recordedTo())));
  }

  /**
   * The power between an edge and another place, in the further half: in the nearer one a filter
   * spreads what is inside.
   */
  private double powerFar(int edge, int to) {
    int middle = (edge + to) / 2;
    return power(reading.ret(), Math.min(middle, to), Math.max(middle, to));
  }

  private boolean goesOn(double inside, double outside) {
    return isSound(inside) && outside > GOES_ON * inside;
  }

  /**
   * What is heard inside is the arrival and noise. Outside the noise is as loud; where there is
   * more than it, the arrival goes on.
   */
  private boolean goesOn(double reference, double inside, double outside) {
    double heard = arrival.gain() * arrival.gain() * reference;
    double noise = Math.max(0, inside - heard);
    return isSound(reference) && outside > noise + GOES_ON * Math.max(heard, inside);
  }

  /** A stretch is no louder than all the energy within it would be: most need no search. */
  private boolean isSound(double power) {
    return power > SILENT * energy / stretch || power > SILENT * loudest();
  }

  /** The power of the loudest stretch, worked out when it is first asked for. */
  private double loudest() {
    loudest = loudest < 0 ? findLoudest() : loudest;
    return loudest;
  }

  private double findLoudest() {
    double most = 0;
    for (int from = 0; from < reading.reference().length(); from += stretch) {
      most = Math.max(most, power(reading.reference(), from, from + stretch));
    }
    return most;
  }

  private static double power(Samples samples, int from, int to) {
    double[] values = new double[Math.max(0, to - from)];
    samples.copyTo(from, values, 0, values.length);
    return Loudness.energy(values) / Math.max(1, values.length);
  }
}
