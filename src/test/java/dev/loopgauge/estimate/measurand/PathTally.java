package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.filter.Filter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the trials of one filter, or of several, came to. */
final class PathTally {
  private static final int TRIALS = 0;
  private static final int FOUND = 1;
  private static final int PURE = 2;
  private static final int INSIDE = 3;
  private static final int PAIRS = 4;
  private static final int OVERLAPPING = 5;
  private static final int MOMENT = 6;
  private static final int WITHIN_SPREAD = 7;
  private static final int KINDS = 8;

  private final int[] counts = new int[KINDS];
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
    return Stream.concat(Arrays.stream(counts).mapToObj(String::valueOf), wrongPolarity.stream())
        .toList();
  }

  private int of(int kind) {
    return counts[kind];
  }

  private void count(int kind) {
    counts[kind]++;
  }

  /** Counts one trial of a filter after a known pure delay. */
  void add(Optional<Measurement> measured, Filter filter, double delay) {
    count(TRIALS);
    measured.ifPresent(m -> count(m, filter, delay));
    measured
        .flatMap(Measurement::pure)
        .ifPresent(
            pure -> {
              count(PURE);
              if (Math.abs(pure.samples() - delay) <= pure.uncertaintySamples()) {
                count(INSIDE);
              }
            });
  }

  /** Holds a delay against the filter's own in the band that was read. */
  private void count(Measurement measured, Filter filter, double delay) {
    count(FOUND);
    FilterMoment moment =
        FilterMoment.of(filter, measured.passband().orElseThrow(), FilteredTrial.RATE);
    double off = measured.delay().samples() - delay - moment.samples();
    if (Math.abs(off) <= measured.uncertaintySamples()) {
      count(MOMENT);
    }
    if (measured.uncertaintySamples() <= moment.spread()) {
      count(WITHIN_SPREAD);
    }
  }

  /** Counts a trial whose polarity is wrong. */
  void wrongPolarity(String which) {
    wrongPolarity.add(which);
  }

  /** Compares measurements of one path, two by two. */
  void compare(List<Measurement> all) {
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < i; j++) {
        count(PAIRS);
        if (overlap(all.get(i), all.get(j))) {
          count(OVERLAPPING);
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
    return of(INSIDE) >= share * of(PURE);
  }

  /** Whether at least this share of the delays lies within its uncertainty of the filter's own. */
  boolean holdsMoment(double share) {
    return of(MOMENT) >= share * of(FOUND);
  }

  /** Whether at least this share of pairs of stimuli agrees. */
  boolean overlaps(double share) {
    return of(OVERLAPPING) >= share * of(PAIRS);
  }

  /** The head of a Markdown table of tallies. */
  static String tableHead(String seeds) {
    return "Seeds: "
        + seeds
        + "\n\n| filter | trials | found | pure delay given | covered | pairs of stimuli agree"
        + " | delay as by coefficients | uncertainty at most the group delays' spread"
        + " | wrong polarity |\n|---|---|---|---|---|---|---|---|---|\n";
  }

  /** This tally as a row of the table. */
  String row(String name) {
    String told =
        Stream.of(TRIALS, FOUND, PURE)
            .map(kind -> String.valueOf(of(kind)))
            .collect(Collectors.joining(" | "));
    return String.format(
        Locale.ROOT,
        "| %s | %s | %s | %s | %s | %s | %d |%n",
        name,
        told,
        share(INSIDE, PURE),
        share(OVERLAPPING, PAIRS),
        share(MOMENT, FOUND),
        share(WITHIN_SPREAD, FOUND),
        wrongPolarity.size());
  }

  private String share(int part, int whole) {
    return of(whole) == 0
        ? "-"
        : String.format(Locale.ROOT, "%.1f %%", 100.0 * of(part) / of(whole));
  }
}
