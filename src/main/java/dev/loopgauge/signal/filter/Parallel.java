package dev.loopgauge.signal.filter;

import java.util.List;
import java.util.function.Function;

/**
 * Filters side by side: each hears the same sound, and what comes out is added.
 *
 * @param parts in any order
 */
public record Parallel(List<Filter> parts) implements Filter {
  /** Copies the list. */
  public Parallel {
    parts = List.copyOf(parts);
  }

  @Override
  public double[] on(double[] sound) {
    double[] sum = new double[sound.length];
    for (Filter part : parts) {
      double[] out = part.on(sound);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += out[i];
      }
    }
    return sum;
  }

  @Override
  public Complex response(double cycles) {
    return sum(part -> part.response(cycles));
  }

  @Override
  public Complex slope(double cycles) {
    return sum(part -> part.slope(cycles));
  }

  private Complex sum(Function<Filter, Complex> value) {
    return parts.stream().map(value).reduce(Complex.ZERO, Complex::plus);
  }
}
