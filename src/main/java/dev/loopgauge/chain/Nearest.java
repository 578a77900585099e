package dev.loopgauge.chain;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that a mistyped one was meant to be. */
public final class Nearest {
  private static final int MOST_EDITS = 3;
  private static final int LETTERS_PER_EDIT = 3;
  private static final int MOST_LISTED = 12;

  private Nearest() {}

  /** What to try instead of {@code found}: the nearest known name, or else what there is. */
  public static String hint(String found, Collection<String> known) {
    return name(found, known)
        .map(name -> "'" + name + "' is the nearest known name")
        .orElseGet(() -> listed(List.copyOf(known)));
  }

  /** The known name nearest to {@code found}, unless none is near enough to have been meant. */
  public static Optional<String> name(String found, Collection<String> known) {
    String wanted = found.toLowerCase(Locale.ROOT);
    int allowed = Math.max(1, Math.min(MOST_EDITS, wanted.length() / LETTERS_PER_EDIT));
    Optional<String> best = Optional.empty();
    for (String name : known) {
      int edits = edits(wanted, name.toLowerCase(Locale.ROOT), allowed);
      if (edits <= allowed) {
        best = Optional.of(name);
        allowed = edits - 1;
      }
    }
    return best;
  }

  private static String listed(List<String> known) {
    if (known.isEmpty()) {
      return "none is defined yet";
    }
    int shown = Math.min(known.size(), MOST_LISTED);
    String names = String.join(", ", known.subList(0, shown));
    return "known are "
        + names
        + (shown < known.size() ? " and " + (known.size() - shown) + " more" : "");
  }

  /**
   * How many letters must be put in, left out, replaced or swapped with their neighbour to make one
   * word the other: the restricted Damerau-Levenshtein distance. Words whose lengths alone are
   * further apart than {@code worthwhile} are not compared.
   */
  private static int edits(String a, String b, int worthwhile) {
    if (Math.abs(a.length() - b.length()) > worthwhile) {
      return Integer.MAX_VALUE;
    }
    int[][] edits = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        edits[i][j] = i == 0 || j == 0 ? i + j : step(edits, a, b, i, j);
      }
    }
    return edits[a.length()][b.length()];
  }

  private static int step(int[][] edits, String a, String b, int i, int j) {
    int replaced = edits[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
    int best = Math.min(replaced, 1 + Math.min(edits[i - 1][j], edits[i][j - 1]));
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(best, 1 + edits[i - 2][j - 2]) : best;
  }
}
