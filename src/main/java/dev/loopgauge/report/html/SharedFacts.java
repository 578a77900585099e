package dev.loopgauge.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What readings were measured with, told once where it is the same for all. */
final class SharedFacts {
  private static final int MOST_NAMED = 6;

  private final List<ReadDocument> readings;
  private final Map<String, Map<String, List<String>>> values = new LinkedHashMap<>();

  /** Of readings. */
  SharedFacts(List<ReadDocument> readings) {
    this.readings = List.copyOf(readings);
    List<Map<String, String>> all = readings.stream().map(Facts::of).toList();
    Set<String> names = new LinkedHashSet<>();
    all.forEach(facts -> names.addAll(facts.keySet()));
    for (String name : names) {
      Map<String, List<String>> where = new LinkedHashMap<>();
      for (int i = 0; i < all.size(); i++) {
        boolean untold = !all.get(i).containsKey(name) && Facts.MEASURED.contains(name);
        if (!untold) {
          String value = all.get(i).getOrDefault(name, "-");
          where.computeIfAbsent(value, v -> new ArrayList<>()).add(told(readings.get(i)));
        }
      }
      values.put(name, where);
    }
  }

  /** A reading in a few words: {@code vocal-house, before}. */
  static String told(ReadDocument reading) {
    return Escaping.shortened(reading.path(), 60)
        + reading.when().map(when -> ", " + when.label()).orElse("");
  }

  /** What is the same for all. */
  Grid shared() {
    String whom =
        readings.size() == 1 ? "What it was measured with" : "The same for all " + readings.size();
    Grid grid =
        new Grid(whom + (readings.size() == 1 ? "" : " readings"), "Fact", "Value").words(2);
    values.forEach(
        (name, where) -> {
          if (where.size() == 1) {
            grid.row(name, where.keySet().iterator().next());
          }
        });
    return grid;
  }

  /** What differs, each value with its readings. */
  Grid different() {
    Grid grid = new Grid("What differs", "Fact", "Value", "Readings").words(3);
    values.forEach(
        (name, where) -> {
          if (where.size() > 1) {
            where.forEach((value, who) -> grid.row(name, value, listed(who)));
          }
        });
    return grid;
  }

  private static String listed(List<String> who) {
    int shown = who.size() > MOST_NAMED ? MOST_NAMED - 1 : who.size();
    String more = who.size() > shown ? " and " + (who.size() - shown) + " more" : "";
    return String.join("; ", who.subList(0, shown)) + more;
  }
}
