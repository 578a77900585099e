package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Reading;
import java.util.Arrays;
import java.util.BitSet;

/**
 * A reference as the design matrix of a filter's least-squares fit: row i holds its samples i -
 * reach to i + reach, newest tap first. Products are worked out by one transform of its length.
 */
public final class FilteredReference {
  private final RealFft fft;
  private final double[] spectrum;
  private final int length;
  private final int reach;

  /**
   * A design matrix.
   *
   * @param reach how many taps lie on either side of no delay
   */
  public FilteredReference(Reading reading, int reach) {
    this.length = reading.reference().length();
    this.reach = reach;
    this.fft = new RealFft(RealFft.lengthFor(length + 2 * reach));
    this.spectrum = new double[fft.length()];
    double[] known = new double[length + 2 * reach];
    reading.reference().copyTo(-reach, known, 0, known.length);
    for (int i = 0; i < known.length; i++) {
      spectrum[Math.floorMod(i - reach, spectrum.length)] = known[i];
    }
    fft.forward(spectrum);
  }

  /** X v: what a filter makes of the reference. */
  public double[] rows(double[] taps) {
    double[] rows = new double[fft.length()];
    for (int i = 0; i < taps.length; i++) {
      rows[Math.floorMod(i - reach, rows.length)] = taps[i];
    }
    fft.forward(rows);
    Packed.multiply(rows, spectrum);
    fft.inverse(rows);
    return Arrays.copyOf(rows, length);
  }

  /** X' X v over the rows that aren't left out, each less the mean of them: any offset fits. */
  public double[] normal(double[] taps, BitSet leftOut) {
    double[] rows = rows(taps);
    leftOut.stream().forEach(i -> rows[i] = 0);
    double mean = Arrays.stream(rows).sum() / (length - leftOut.cardinality());
    for (int i = leftOut.nextClearBit(0); i < length; i = leftOut.nextClearBit(i + 1)) {
      rows[i] -= mean;
    }
    return times(rows);
  }

  /** X' w. */
  public double[] times(double[] values) {
    return transposed(Arrays.copyOf(values, fft.length()));
  }

  private double[] transposed(double[] rows) {
    double[] sum = new double[rows.length];
    fft.forward(rows);
    Packed.accumulateCrossSpectrum(spectrum, rows, sum);
    fft.inverse(sum);
    double[] taps = new double[2 * reach + 1];
    for (int i = 0; i < taps.length; i++) {
      taps[i] = sum[Math.floorMod(i - reach, sum.length)];
    }
    return taps;
  }
}
