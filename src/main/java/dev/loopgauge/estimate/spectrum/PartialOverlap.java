package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import java.util.ArrayList;
import java.util.List;

/**
 * How much of some references can be in their returns at all. Two recordings that end together hold
 * less of an arrival the later it is: its end came after the recording stopped. What is missing
 * makes a later arrival look weaker, and where sound is cut off the edge looks like arrivals that
 * aren't there, most of all where the sound repeats itself.
 *
 * <p>Of an arrival of which only a part was recorded the log-likelihood is R^2 over the energy of
 * that part (S. M. Kay, "Estimation Theory", example 7.15, with the observed part of the signal in
 * its place).
 */
public final class PartialOverlap {
  /** Where less than this share of the energy is recorded, a lag isn't raised any further. */
  public static final double LEAST = 0.5;

  /** So much more than it shows a lag counts for at most. */
  static final double MOST_RAISED = 1 / Math.sqrt(LEAST);

  private final List<Reading> readings;
  private final double energy;

  /**
   * The overlap of some readings.
   *
   * @param energy the energy of all their references
   */
  public PartialOverlap(List<Reading> readings, double energy) {
    this.readings = readings;
    this.energy = energy;
  }

  /** A part of a reference: from (inclusive) to (exclusive). */
  private record Part(int from, int to) {}

  /**
   * The lag at which a correlation is largest in magnitude once each value is raised to what it
   * would be, had all of its arrival been recorded.
   *
   * @param lags the correlation at whole lags
   * @param first the first of them
   */
  public int strongest(double[] lags, int first) {
    double least = Math.abs(lags[PeakSearch.strongest(lags)]) / MOST_RAISED;
    int from = 0;
    while (Math.abs(lags[from]) < least) {
      from++;
    }
    int to = lags.length;
    while (Math.abs(lags[to - 1]) < least) {
      to--;
    }
    double[] raised = factors(first + from, to - from);
    for (int i = 0; i < raised.length; i++) {
      raised[i] *= lags[from + i];
    }
    return first + from + PeakSearch.strongest(raised);
  }

  /**
   * A correlation as it would be, had all of each arrival been recorded and been as alike as its
   * recorded part: two lags of one loop come to the same.
   *
   * @param lags the correlation at whole lags, which becomes that
   * @param first the first of them
   */
  void complete(double[] lags, int first) {
    double[] factors = factors(first, lags.length);
    for (int i = 0; i < lags.length; i++) {
      lags[i] *= factors[i] * factors[i];
    }
  }

  /** What the values at {@code count} lags are to be raised by. */
  private double[] factors(int first, int count) {
    double[] factors = new double[count];
    for (Reading reading : readings) {
      addMissing(reading, first, factors);
    }
    for (int i = 0; i < factors.length; i++) {
      factors[i] = 1 / Math.sqrt(Math.max(LEAST, 1 - factors[i] / energy));
    }
    return factors;
  }

  /** Adds for each lag from a first on the energy of a reference that can't be in the return. */
  private static void addMissing(Reading reading, int first, double[] missing) {
    int length = reading.reference().length();
    int headEnd = firstRecorded(reading, first);
    int tailStart = endRecorded(reading, first + missing.length - 1);
    if (headEnd == 0 && tailStart == length) {
      return;
    }
    double[] head = energies(reading, 0, headEnd);
    double[] tail = energies(reading, tailStart, length);
    double all = tail[tail.length - 1];
    for (int i = 0; i < missing.length; i++) {
      int from = firstRecorded(reading, first + i);
      int to = endRecorded(reading, first + i);
      missing[i] += head[from] + all - tail[to - tailStart];
    }
  }

  /**
   * Readings with their references cut.
   *
   * @param readings all of them, those that need no cut as they were
   * @param lost the share of the references' energy that was cut off
   * @param missing the share whose arrival was not recorded at all
   */
  public record Cut(List<Reading> readings, double lost, double missing) {
    /** Whether what is left says little of the whole. */
    public boolean leavesTooLittle() {
      return Math.max(lost, missing) > 1 - LEAST;
    }
  }

  /**
   * Cuts the references so far inside what was recorded that what goes on beyond the edges is known
   * on both sides, where an edge cuts through sound.
   *
   * @param arrival the arrival in the return
   * @param margin how far from it a filter may spread it, in samples
   */
  Cut cutTo(FittedArrival arrival, int margin) {
    List<Reading> all = new ArrayList<>();
    double lost = 0;
    double missing = 0;
    for (Reading reading : readings) {
      Reading cut = cut(reading, arrival, margin);
      all.add(cut);
      lost += energy(cutOff(reading, cut));
      Part part = recorded(reading, nearest(arrival));
      missing += energy(outside(reading, part.from(), part.to()));
    }
    return new Cut(all, lost / energy, missing / energy);
  }

  private Reading cut(Reading reading, FittedArrival arrival, int margin) {
    Truncation edges = new Truncation(reading, arrival, energy);
    Part part = recorded(reading, nearest(arrival));
    int length = reading.reference().length();
    int before = Math.max(reading.knownFrom(), reading.recordedFrom() - nearest(arrival)) + margin;
    int after = Math.min(reading.knownTo(), reading.recordedTo() - nearest(arrival)) - margin;
    int from = before > 0 && edges.startCutsSound(part.from()) ? before : 0;
    int to = after < length && edges.endCutsSound(part.to()) ? after : length;
    if (to - from == length) {
      return reading;
    }
    // Where nothing is left, one sample stands for it: a reading can't be empty.
    int start = Math.min(from, length - 1);
    return reading.part(start, Math.max(start + 1, to));
  }

  /** What was cut off a reading on either side. */
  static List<Reading> cutOff(Reading whole, Reading cut) {
    int from = cut.start() - whole.start();
    return outside(whole, from, from + cut.reference().length());
  }

  private static List<Reading> outside(Reading whole, int from, int to) {
    List<Reading> parts = new ArrayList<>();
    if (from > 0) {
      parts.add(whole.part(0, from));
    }
    if (to < whole.reference().length()) {
      parts.add(whole.part(to, whole.reference().length()));
    }
    return parts;
  }

  private static double energy(List<Reading> parts) {
    double sum = 0;
    for (Reading part : parts) {
      sum += Loudness.of(part.reference()).energy();
    }
    return sum;
  }

  /** The part of a reference whose arrival at a whole delay lies within the recording. */
  private static Part recorded(Reading reading, int delay) {
    return new Part(firstRecorded(reading, delay), endRecorded(reading, delay));
  }

  private static int firstRecorded(Reading reading, int delay) {
    return Math.min(reading.reference().length(), Math.max(0, reading.recordedFrom() - delay));
  }

  private static int endRecorded(Reading reading, int delay) {
    int end = Math.min(reading.reference().length(), reading.recordedTo() - delay);
    return Math.max(firstRecorded(reading, delay), end);
  }

  private static int nearest(FittedArrival arrival) {
    return (int) Math.rint(arrival.lag());
  }

  /** The energy of a part of a reference up to each of its samples, from 0 to all of it. */
  private static double[] energies(Reading reading, int from, int to) {
    double[] samples = new double[to - from];
    reading.reference().copyTo(from, samples, 0, samples.length);
    double[] sums = new double[samples.length + 1];
    for (int i = 0; i < samples.length; i++) {
      sums[i + 1] = sums[i] + samples[i] * samples[i];
    }
    return sums;
  }
}
