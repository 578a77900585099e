package dev.loopgauge.signal.filter;

import java.util.List;
import java.util.stream.Stream;

/**
 * Filters one after the other.
 *
 * @param parts in the order in which the sound meets them
 */
public record Cascade(List<Filter> parts) implements Filter {
  /** Copies the list. */
  public Cascade {
    parts = List.copyOf(parts);
  }

  /** These filters one after the other. */
  static Cascade of(Filter... parts) {
    return new Cascade(List.of(parts));
  }

  @Override
  public double[] on(double[] sound) {
    double[] out = sound.clone();
    for (Filter part : parts) {
      out = part.on(out);
    }
    return out;
  }

  @Override
  public Complex response(double cycles) {
    return responses(cycles).reduce(Complex.ONE, Complex::times);
  }

  /** The product rule. */
  @Override
  public Complex slope(double cycles) {
    Complex response = Complex.ONE;
    Complex slope = Complex.ZERO;
    for (Filter part : parts) {
      Complex own = part.response(cycles);
      slope = slope.times(own).plus(response.times(part.slope(cycles)));
      response = response.times(own);
    }
    return slope;
  }

  private Stream<Complex> responses(double cycles) {
    return parts.stream().map(part -> part.response(cycles));
  }
}
