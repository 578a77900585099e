package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.PartialOverlap;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;

/**
 * By how much references differ from themselves at the distance where they differ least, where both
 * are known: of a loop that is recorded from the middle nothing is left, however long its turn.
 *
 * @param distance in samples
 * @param share the energy of the difference, of either polarity, over that of the references
 * @param known the share of the references' energy that could be compared
 */
record SelfDifference(int distance, double share, double known) {
  /**
   * Looks for the distance by the correlation of the references with themselves.
   *
   * @param auto from lag 0 on
   * @param from the least distance, before the end of {@code auto}
   */
  static SelfDifference nearest(Spectra spectra, double[] auto, int from) {
    List<Reading> selves = new ArrayList<>();
    for (Reading reading : spectra.readings()) {
      selves.add(new Reading(reading.reference(), reading.reference()));
    }
    double[] beyond = new double[auto.length - from];
    System.arraycopy(auto, from, beyond, 0, beyond.length);
    double energy = spectra.referenceEnergy();
    int distance = new PartialOverlap(selves, energy).strongest(beyond, from);
    return at(distance, auto[distance] < 0 ? -1 : 1, selves);
  }

  private static SelfDifference at(int distance, int sign, List<Reading> selves) {
    double difference = 0;
    double known = 0;
    double all = 0;
    for (Reading self : selves) {
      int from = Math.max(0, self.knownFrom() + distance);
      int to = self.reference().length();
      all += Loudness.of(self.reference()).energy();
      if (from < to) {
        double[] here = copy(self.reference(), from, to);
        double[] earlier = copy(self.reference(), from - distance, to - distance);
        for (int i = 0; i < here.length; i++) {
          known += here[i] * here[i];
          difference += Math.pow(here[i] - sign * earlier[i], 2);
        }
      }
    }
    return new SelfDifference(distance, difference / all, known / all);
  }

  private static double[] copy(Samples samples, int from, int to) {
    double[] values = new double[to - from];
    samples.copyTo(from, values, 0, values.length);
    return values;
  }

  /** Whether enough could be compared, by the same limit as everywhere. */
  boolean isKnown() {
    return known > PartialOverlap.LEAST;
  }
}
