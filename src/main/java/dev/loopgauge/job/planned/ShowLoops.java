package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.When;
import dev.loopgauge.plan.MeasuredLoop;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The loops of a chain's paths as they were measured at a show: of each path the last reading, all
 * of one part of the day.
 *
 * @param chain the chain; readings of other paths don't count
 * @param show the show
 * @param when which part of the day; empty for that of the last reading of each path
 */
record ShowLoops(Chain chain, String show, Optional<When> when) {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ENGLISH);

  /**
   * Reads them.
   *
   * @throws UsageException when there is no such show, it has no settled reading of the chain's
   *     paths, or some of them were read before and some after
   */
  Map<String, MeasuredLoop> in(JournalQueries journal) throws JournalException {
    Map<String, Heading> last = new HashMap<>();
    for (Heading heading : journal.show(show)) {
      heading
          .path()
          .filter(chain.paths()::containsKey)
          .filter(path -> when.filter(part -> part != heading.when()).isEmpty())
          .ifPresent(path -> last.put(path, heading));
    }
    last.values().removeIf(heading -> !isSettled(heading));
    if (last.isEmpty()) {
      throw new UsageException(
          "the show '%s' has no settled measurement%s of a path of the chain"
              .formatted(show, when.map(part -> " " + part.label()).orElse("")),
          Nearest.hint("", chain.paths().keySet()));
    }
    refuseMixture(last);
    Map<String, MeasuredLoop> loops = new HashMap<>();
    last.forEach((path, heading) -> loops.put(path, loop(heading)));
    return loops;
  }

  private static boolean isSettled(Heading heading) {
    return heading.delay().isPresent() && MeasuredFiles.SETTLED.contains(heading.outcome());
  }

  private void refuseMixture(Map<String, Heading> last) {
    Map<When, List<String>> parts =
        last.entrySet().stream()
            .collect(
                Collectors.groupingBy(
                    entry -> entry.getValue().when(),
                    Collectors.mapping(Map.Entry::getKey, Collectors.toList())));
    if (parts.size() > 1) {
      String told =
          parts.entrySet().stream()
              .sorted(Map.Entry.comparingByKey())
              .map(
                  part ->
                      part.getKey().label()
                          + " ("
                          + part.getValue().stream().sorted().collect(Collectors.joining(", "))
                          + ")")
              .collect(Collectors.joining(" and "));
      throw new UsageException(
          "the last readings of '%s' are of different parts of the day: %s".formatted(show, told),
          "choose one, for example --when " + When.BEFORE.label());
    }
  }

  private static MeasuredLoop loop(Heading heading) {
    LoggedDelay logged = heading.delay().orElseThrow();
    return new MeasuredLoop(
        logged.delay(),
        logged.uncertaintySamples(),
        Optional.of(heading.when().label()),
        Optional.of(heading.at().format(MINUTE)));
  }
}
