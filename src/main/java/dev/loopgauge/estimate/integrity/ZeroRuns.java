package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.stats.Odds;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds runs of exact zeros in a return while its reference sounds on: lost sound, even within one
 * sweep. A filter can't be why, since the sound stands beside the run in full.
 *
 * <p>Rounding makes a zero of less than half a step. A sound that fades into that in a line, or
 * comes out of it, has reached a step as far beside the run as the run is long (derived); what is
 * louder there was not fading. Each half wave that the reference has in the run is a value of its
 * own, which is less than half a step with a chance of less than a step over its level (derived:
 * the density of a normal value is 0.4 over its deviation at most). The logarithm of the number of
 * runs comes off.
 */
public final class ZeroRuns {
  /** What a straight line through zero in a run holds of what it holds beside (derived). */
  private static final double THROUGH_ZERO = 1 / Math.sqrt(13);

  private static final int CHUNK = 1 << 12;

  private final Reading reading;
  private final int delay;
  private final List<LostSound.Gap> runs = new ArrayList<>();
  private double step = Double.POSITIVE_INFINITY;

  private ZeroRuns(Reading reading, FittedArrival arrival) {
    this.reading = reading;
    this.delay = (int) Math.rint(arrival.lag());
  }

  /** The runs in a reading, in their order. */
  public static List<LostSound.Gap> of(Reading reading, FittedArrival arrival) {
    ZeroRuns zeros = new ZeroRuns(reading, arrival);
    zeros.find();
    double asked = Odds.BEYOND_DOUBT + Math.log(Math.max(1, zeros.runs.size()));
    List<LostSound.Gap> lost = new ArrayList<>();
    for (LostSound.Gap run : zeros.runs) {
      if (zeros.odds(run.from(), run.from() + run.length()) > asked) {
        lost.add(new LostSound.Gap(reading.start() + zeros.delay + run.from(), run.length()));
      }
    }
    return lost;
  }

  /** Finds all runs, and the smallest step of the return. */
  private void find() {
    int length = reading.reference().length();
    double[] chunk = new double[Math.min(CHUNK, length)];
    int run = 0;
    for (int from = 0; from < length; from += chunk.length) {
      reading.ret().copyTo(delay + from, chunk, 0, chunk.length);
      for (int i = 0; i < chunk.length; i++) {
        if (chunk[i] == 0) {
          run++;
          continue;
        }
        step = Math.min(step, Math.abs(chunk[i]));
        if (run > 0) {
          runs.add(new LostSound.Gap(from + i - run, run));
        }
        run = 0;
      }
    }
  }

  /** The logarithm of likelihoods by which the sound between two samples is lost; 0 if there. */
  private double odds(int from, int to) {
    int side = to - from;
    if (from < side || to + side > reading.reference().length()) {
      return 0;
    }
    double beside = Math.max(played(from - side, from), played(to, to + side));
    double heard = Math.min(heard(from - side, from), heard(to, to + side));
    return played(from, to) > THROUGH_ZERO * beside
        ? halfWaves(from, to) * Math.log(heard / step)
        : 0;
  }

  private int halfWaves(int from, int to) {
    double[] sent = new double[to - from];
    reading.reference().copyTo(from, sent, 0, sent.length);
    return GainCurve.crossings(sent, 0, sent.length);
  }

  private double played(int from, int to) {
    return reading.reference().slice(from, to).rms();
  }

  private double heard(int from, int to) {
    return reading.ret().slice(delay + from, delay + to).rms();
  }
}
