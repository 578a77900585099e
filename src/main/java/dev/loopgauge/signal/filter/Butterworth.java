package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;

/**
 * Filters with the flattest pass band. The poles of order n lie on the unit circle, at odd
 * multiples of pi / 2n from the imaginary axis, so that a pair of them has the quality 1 / (2 sin).
 *
 * <p>Source: S. Butterworth, "On the theory of filter amplifiers", Experimental Wireless 7, 1930
 * (from memory; tests compare it with the closed form and SciPy).
 */
final class Butterworth {
  static final int LOWEST_ORDER = 1;
  static final int HIGHEST_ORDER = 4;

  private Butterworth() {}

  /** Refuses a corner or an order out of range. */
  static void check(double hertz, int order) {
    Limits.check("the corner", hertz, Prototype.LOWEST_HZ, Prototype.HIGHEST_HZ, "Hz");
    Limits.check("the order", order, LOWEST_ORDER, HIGHEST_ORDER, "(6 dB an octave each)");
  }

  static Cascade lowPass(double hertz, int order, SampleRate rate) {
    List<Filter> sections = new ArrayList<>();
    sections(order).forEach(section -> sections.add(section.at(hertz, rate)));
    return new Cascade(sections);
  }

  static Cascade highPass(double hertz, int order, SampleRate rate) {
    List<Filter> sections = new ArrayList<>();
    sections(order).forEach(section -> sections.add(section.mirrored().at(hertz, rate)));
    return new Cascade(sections);
  }

  private static List<Prototype> sections(int order) {
    List<Prototype> sections = new ArrayList<>();
    for (int pair = 1; pair <= order / 2; pair++) {
      double twiceSine = 2 * Math.sin((2 * pair - 1) * Math.PI / (2 * order));
      sections.add(new Prototype.Second(0, 0, 1, 1, twiceSine, 1));
    }
    if (order % 2 == 1) {
      sections.add(new Prototype.First(0, 1, 1, 1));
    }
    return sections;
  }
}
