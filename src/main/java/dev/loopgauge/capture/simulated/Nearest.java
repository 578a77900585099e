package dev.loopgauge.capture.simulated;

import java.util.Collection;
import java.util.Comparator;

/** Guesses which known name was meant. */
final class Nearest {
  private Nearest() {}

  /** The name that takes the fewest single-letter changes to reach. */
  static String to(String meant, Collection<String> names) {
    return names.stream()
        .min(Comparator.comparingInt(name -> changes(meant, name)))
        .orElseThrow(() -> new IllegalArgumentException("there are no names to choose from"));
  }

  /** V. I. Levenshtein's distance, 1966, row by row. */
  private static int changes(String from, String to) {
    int[] row = new int[to.length() + 1];
    for (int j = 0; j <= to.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= from.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= to.length(); j++) {
        int swapped = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(swapped, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[to.length()];
  }
}
