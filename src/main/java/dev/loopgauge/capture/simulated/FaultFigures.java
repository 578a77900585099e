package dev.loopgauge.capture.simulated;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * The figures of a fault, as they were typed.
 *
 * @param values in their order
 */
record FaultFigures(List<Double> values) {
  FaultFigures {
    values = List.copyOf(values);
  }

  /**
   * Reads figures with colons between them.
   *
   * @throws IllegalArgumentException when there are fewer or more, or one is no number
   */
  static FaultFigures of(String text, int fewest, int most) {
    return of(text, ":", fewest, most);
  }

  /** The same, with something else between them. */
  static FaultFigures of(String text, String separator, int fewest, int most) {
    List<Double> values = new ArrayList<>();
    for (String part : text.split(separator, -1)) {
      values.add(one(part));
    }
    if (values.size() < fewest || values.size() > most) {
      throw new IllegalArgumentException(
          "expected %s with '%s' between them, not %d"
              .formatted(count(fewest, most), separator, values.size()));
    }
    return new FaultFigures(values);
  }

  /** Reads one figure. */
  static double one(String text) {
    try {
      return new BigDecimal(text).doubleValue();
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("'" + text + "' is no number", e);
    }
  }

  /** The figure at a place, counted from 0. */
  double at(int place) {
    return values.get(place);
  }

  /** The figure at a place, or what is usual where none stands there. */
  double at(int place, double usual) {
    return place < values.size() ? values.get(place) : usual;
  }

  /** The same, whole. */
  int whole(int place, int usual) {
    double value = at(place, usual);
    if (value != Math.rint(value)) {
      throw new IllegalArgumentException(value + " is not a whole number");
    }
    return (int) value;
  }

  private static String count(int fewest, int most) {
    if (fewest == most) {
      return fewest + " figures";
    }
    return fewest + " to " + most + " figures";
  }
}
