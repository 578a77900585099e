package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.BitSet;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against sums written out. */
class FilteredReferenceTest {
  private static final int LENGTH = 50;
  private static final int REACH = 2;
  private static final SplittableRandom RANDOM = new SplittableRandom(8);
  private static final double[] SENT = values(LENGTH);
  private static final double[] TAPS = values(2 * REACH + 1);
  private static final FilteredReference REFERENCE = reference();

  private static double[] values(int count) {
    return RANDOM.doubles(count, -1, 1).toArray();
  }

  private static FilteredReference reference() {
    Signal sent = Signal.of(new SampleRate(8000), SENT);
    return new FilteredReference(new Reading(sent, sent), REACH);
  }

  private static double sent(int i) {
    return i >= 0 && i < LENGTH ? SENT[i] : 0;
  }

  private static double[] rows() {
    double[] rows = new double[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      for (int j = -REACH; j <= REACH; j++) {
        rows[i] += TAPS[REACH + j] * sent(i - j);
      }
    }
    return rows;
  }

  private static double[] times(double[] values) {
    double[] sums = new double[2 * REACH + 1];
    for (int i = 0; i < LENGTH; i++) {
      for (int j = -REACH; j <= REACH; j++) {
        sums[REACH + j] += values[i] * sent(i - j);
      }
    }
    return sums;
  }

  @Test
  void filtersReference() {
    assertArrayEquals(rows(), REFERENCE.rows(TAPS), 1e-12);
  }

  @Test
  void correlatesWithReference() {
    double[] values = values(LENGTH);
    assertArrayEquals(times(values), REFERENCE.times(values), 1e-12);
  }

  @Test
  void leavesOutRowsAndTheMeanOfTheOthers() {
    BitSet leftOut = new BitSet();
    leftOut.set(0);
    leftOut.set(10, 20);
    double[] rows = rows();
    double mean = 0;
    for (int i = 0; i < LENGTH; i++) {
      mean += leftOut.get(i) ? 0 : rows[i] / (LENGTH - 11);
    }
    for (int i = 0; i < LENGTH; i++) {
      rows[i] = leftOut.get(i) ? 0 : rows[i] - mean;
    }
    assertArrayEquals(times(rows), REFERENCE.normal(TAPS, leftOut), 1e-12);
  }
}
