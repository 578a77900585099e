package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.result.Measurement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the trials of one filter, or of several, came to. */
final class PathTally {
  private enum Counted {
    TRIALS,
    FOUND,
    PURE,
    INSIDE,
    PAIRS,
    OVERLAPPING
  }

  private final int[] counts = new int[Counted.values().length];
  private final List<String> wrongPolarity = new ArrayList<>();

  /** A tally of an earlier run. */
  static PathTally read(List<String> figures) {
    PathTally tally = new PathTally();
    Arrays.setAll(tally.counts, i -> Integer.parseInt(figures.get(i)));
    tally.wrongPolarity.addAll(figures.subList(tally.counts.length, figures.size()));
    return tally;
  }

  /** All that {@link #read} asks for. */
  List<String> figures() {
    return Stream.concat(
            Arrays.stream(counts).mapToObj(String::valueOf), wrongPolarity.stream())
        .toList();
  }

  private int of(Counted counted) {
    return counts[counted.ordinal()];
  }

  private void count(Counted counted) {
    counts[counted.ordinal()]++;
  }

  /** Counts one trial of a known pure delay. */
  void add(Optional<Measurement> measured, double delay) {
    count(Counted.TRIALS);
    measured.ifPresent(m -> count(Counted.FOUND));
    measured
        .flatMap(Measurement::pure)
        .ifPresent(
            pure -> {
              count(Counted.PURE);
              if (Math.abs(pure.samples() - delay) <= pure.uncertaintySamples()) {
                count(Counted.INSIDE);
              }
            });
  }

  /** Counts a trial whose polarity is wrong. */
  void wrongPolarity(String which) {
    wrongPolarity.add(which);
  }

  /** Compares measurements of one path, two by two. */
  void compare(List<Measurement> all) {
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < i; j++) {
        count(Counted.PAIRS);
        if (overlap(all.get(i), all.get(j))) {
          count(Counted.OVERLAPPING);
        }
      }
    }
  }

  private static boolean overlap(Measurement one, Measurement other) {
    double apart = Math.abs(one.delay().samples() - other.delay().samples());
    return apart <= one.uncertaintySamples() + other.uncertaintySamples();
  }

  /** This and another tally as one. */
  PathTally plus(PathTally other) {
    PathTally both = new PathTally();
    Arrays.setAll(both.counts, i -> counts[i] + other.counts[i]);
    both.wrongPolarity.addAll(wrongPolarity);
    both.wrongPolarity.addAll(other.wrongPolarity);
    return both;
  }

  /** The trials whose polarity is wrong. */
  List<String> wrongPolarity() {
    return wrongPolarity;
  }

  /** Whether at least this share of the pure delays lies within its uncertainty. */
  boolean covers(double share) {
    return of(Counted.INSIDE) >= share * of(Counted.PURE);
  }

  /** Whether at least this share of pairs of stimuli agrees. */
  boolean overlaps(double share) {
    return of(Counted.OVERLAPPING) >= share * of(Counted.PAIRS);
  }

  /** The head of a Markdown table of tallies. */
  static String tableHead(String seeds) {
    return "Seeds: "
        + seeds
        + "\n\n| filter | trials | found | pure delay given | covered | pairs of stimuli agree"
        + " | wrong polarity |\n|---|---|---|---|---|---|---|\n";
  }

  /** This tally as a row of the table. */
  String row(String name) {
    String told =
        Stream.of(Counted.TRIALS, Counted.FOUND, Counted.PURE)
            .map(counted -> String.valueOf(of(counted)))
            .collect(Collectors.joining(" | "));
    return String.format(
        Locale.ROOT,
        "| %s | %s | %s | %s | %d |%n",
        name,
        told,
        share(Counted.INSIDE, Counted.PURE),
        share(Counted.OVERLAPPING, Counted.PAIRS),
        wrongPolarity.size());
  }

  private String share(Counted part, Counted whole) {
    return of(whole) == 0
        ? "-"
        : String.format(Locale.ROOT, "%.1f %%", 100.0 * of(part) / of(whole));
  }
}
