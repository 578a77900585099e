package dev.loopgauge.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All routings at one setting. The best of all combinations is put together path by path, as if
 * paths did not influence each other, and then tried as a whole: a path that is taken from before
 * the host may be the first that a seat hears.
 *
 * @param setting the setting
 * @param routings the ways that paths could run there
 * @param paths the ways that each path could run, in the order of the chain
 */
record Trial(Setting setting, Routings routings, List<List<Feed>> paths) {
  private static final Comparator<Breach> BY_EXCESS = Comparator.comparingDouble(Breach::overMs);

  /** Every way of every path at a setting. */
  static Trial of(PlanRequest request, Setting setting) {
    Routings routings = new Routings(request, setting);
    return new Trial(
        setting, routings, request.chain().paths().values().stream().map(routings::of).toList());
  }

  /**
   * The combination that keeps all limits, brings sound closest to picture, and then takes the
   * fewest paths from before the host; empty where none keeps all limits.
   */
  Optional<Choice> choice() {
    List<List<Feed>> within =
        paths.stream()
            .map(ways -> ways.stream().filter(way -> way.breach(setting).isEmpty()).toList())
            .toList();
    if (within.stream().anyMatch(List::isEmpty)) {
      return Optional.empty();
    }
    double apart = within.stream().mapToDouble(Trial::closestMs).max().orElse(0);
    List<Feed> chosen = new ArrayList<>();
    for (List<Feed> ways : within) {
      chosen.add(
          ways.stream().filter(way -> way.pictureApartMs() <= apart).findFirst().orElseThrow());
    }
    return routings.holdTogether(chosen)
        ? Optional.of(new Choice(setting, chosen))
        : Optional.empty();
  }

  private static double closestMs(List<Feed> ways) {
    return ways.stream().mapToDouble(Feed::pictureApartMs).min().orElse(0);
  }

  /** For each path that can't keep its limit, the breach that is least over. */
  List<Breach> breaches() {
    return paths.stream().flatMap(ways -> leastBreach(ways).stream()).toList();
  }

  /** The breach furthest over its limit; empty where all limits can be kept. */
  Optional<Breach> worstBreach() {
    return breaches().stream().max(BY_EXCESS);
  }

  private Optional<Breach> leastBreach(List<Feed> ways) {
    List<Breach> breaches = ways.stream().flatMap(way -> way.breach(setting).stream()).toList();
    return breaches.size() < ways.size() ? Optional.empty() : breaches.stream().min(BY_EXCESS);
  }
}
