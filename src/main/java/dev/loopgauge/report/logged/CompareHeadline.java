package dev.loopgauge.report.logged;

import dev.loopgauge.journal.PathPair.Standing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The first line of a comparison: how many paths are the same, which changed and in what, and how
 * many could not be compared.
 *
 * @param first what the first measurements are called, such as before
 * @param second what the second ones are called
 */
record CompareHeadline(String first, String second, List<ComparedRecord> paths) {
  private static final int MOST_NAMED = 4;
  private static final int PATH_COLUMNS = 20;

  /** The line. */
  String line() {
    List<ComparedRecord> changed = those(Standing.CHANGED);
    String line =
        "%d of %d path%s the same"
            .formatted(those(Standing.SAME).size(), paths.size(), paths.size() == 1 ? "" : "s");
    if (!changed.isEmpty()) {
      line += ", %d CHANGED: %s".formatted(changed.size(), named(changed));
    }
    String separator = changed.isEmpty() ? ", " : "; ";
    return line + missing().stream().map(separator::concat).collect(Collectors.joining()) + ".";
  }

  private List<ComparedRecord> those(Standing standing) {
    return paths.stream().filter(path -> path.standing() == standing).toList();
  }

  private static String named(List<ComparedRecord> changed) {
    String names =
        changed.stream()
            .limit(MOST_NAMED)
            .map(path -> path.name(PATH_COLUMNS) + " (" + path.aspects() + ")")
            .collect(Collectors.joining(", "));
    int more = changed.size() - MOST_NAMED;
    return more > 0 ? names + " and " + more + " more" : names;
  }

  /** How many paths could not be compared, reason by reason. */
  private List<String> missing() {
    List<String> parts = new ArrayList<>();
    those(Standing.NOT_COMPARED).stream()
        .collect(
            Collectors.groupingBy(
                path -> path.missing(first, second), LinkedHashMap::new, Collectors.counting()))
        .forEach((why, count) -> parts.add(count + " " + why));
    return parts;
  }
}
