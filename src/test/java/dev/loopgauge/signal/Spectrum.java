package dev.loopgauge.signal;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/** Convolution and spectra by Apache Commons Math, to check against. */
final class Spectrum {
  private static final FastFourierTransformer FFT =
      new FastFourierTransformer(DftNormalization.STANDARD);

  private Spectrum() {}

  /** The linear convolution of two sequences. */
  static double[] convolve(double[] a, double[] b) {
    int length = a.length + b.length - 1;
    Complex[] product = transform(a, length);
    Complex[] other = transform(b, length);
    for (int i = 0; i < product.length; i++) {
      product[i] = product[i].multiply(other[i]);
    }
    Complex[] result = FFT.transform(product, TransformType.INVERSE);
    return Arrays.stream(result, 0, length).mapToDouble(Complex::getReal).toArray();
  }

  /** The circular autocorrelation at every lag. */
  static double[] autocorrelation(double[] period) {
    int n = period.length;
    double[] twice = Arrays.copyOf(period, 2 * n);
    System.arraycopy(period, 0, twice, n, n);
    return Arrays.copyOfRange(convolve(twice, reversed(period)), n - 1, 2 * n - 1);
  }

  static double[] reversed(double[] values) {
    double[] reversed = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      reversed[i] = values[values.length - 1 - i];
    }
    return reversed;
  }

  /** The magnitude at one frequency, as a direct sum. */
  static double magnitude(Signal signal, double hz) {
    double step = 2 * Math.PI * hz / signal.rate().hertz();
    double real = 0;
    double imaginary = 0;
    for (int i = 0; i < signal.length(); i++) {
      real += signal.at(i) * Math.cos(step * i);
      imaginary += signal.at(i) * Math.sin(step * i);
    }
    return Math.hypot(real, imaginary);
  }

  private static Complex[] transform(double[] values, int length) {
    int padded = Integer.highestOneBit(length - 1) << 1;
    return FFT.transform(Arrays.copyOf(values, padded), TransformType.FORWARD);
  }
}
