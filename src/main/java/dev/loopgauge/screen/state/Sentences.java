package dev.loopgauge.screen.state;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.screen.state.ScreenState.PathState;
import dev.loopgauge.screen.state.ScreenState.Sentence;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** The one sentence over all paths. */
final class Sentences {
  private static final int MOST_NAMED = 3;

  private Sentences() {}

  /** What matters most. */
  static Sentence of(List<PathState> paths) {
    List<PathState> known = paths.stream().filter(Sentences::isKnown).toList();
    if (known.isEmpty()) {
      return told(paths, Judgement.NOT_JUDGED, "Nothing measured yet. " + predicted(paths));
    }
    List<PathState> bad = standing(known, Judgement.BAD);
    List<PathState> open = standing(known, Judgement.UNDECIDED);
    if (!bad.isEmpty()) {
      return told(paths, Judgement.BAD, wrong(bad));
    }
    if (!open.isEmpty()) {
      return told(paths, Judgement.UNDECIDED, wrong(open));
    }
    List<PathState> old = known.stream().filter(Sentences::isOutdated).toList();
    return old.isEmpty()
        ? told(paths, Judgement.GOOD, good(paths, known))
        : told(
            paths,
            Judgement.UNDECIDED,
            "Within budget and limits when measured, but the chain file has changed since: "
                + named(old)
                + ". Measure again.");
  }

  private static boolean isKnown(PathState path) {
    return path.reading().isPresent() || path.moved().isPresent();
  }

  private static boolean isOutdated(PathState path) {
    return path.reading().flatMap(ReadingState::outdated).isPresent();
  }

  private static Sentence told(List<PathState> paths, Judgement standing, String text) {
    List<Long> taken =
        paths.stream().flatMap(path -> path.reading().stream()).map(ReadingState::atMs).toList();
    return new Sentence(
        standing,
        text,
        taken.stream().min(Comparator.naturalOrder()),
        taken.stream().max(Comparator.naturalOrder()));
  }

  private static String good(List<PathState> paths, List<PathState> measured) {
    if (measured.size() == paths.size()) {
      String all = paths.size() == 1 ? "The path is" : "All " + paths.size() + " paths are";
      return all + " within budget and limits.";
    }
    return "%d of %d paths measured, within budget and limits. Not measured: %s."
        .formatted(
            measured.size(),
            paths.size(),
            named(paths.stream().filter(path -> path.reading().isEmpty()).toList()));
  }

  private static List<PathState> standing(List<PathState> paths, Judgement judgement) {
    return paths.stream().filter(path -> path.standing() == judgement).toList();
  }

  /** One is told in full, several by their words. */
  private static String wrong(List<PathState> paths) {
    if (paths.size() == 1) {
      PathState path = paths.get(0);
      if (path.moved().isPresent()) {
        return path.name() + ": " + path.word() + ", while watched. Measure it again.";
      }
      String line = path.reading().orElseThrow().line();
      return line.contains(path.name()) ? line : path.name() + ": " + line;
    }
    String told =
        paths.stream()
            .limit(MOST_NAMED)
            .map(path -> path.name() + " " + path.word())
            .collect(Collectors.joining("; "));
    int more = paths.size() - MOST_NAMED;
    return paths.size() + " paths: " + told + (more > 0 ? "; and " + more + " more." : ".");
  }

  private static String named(List<PathState> paths) {
    String names =
        paths.stream().limit(MOST_NAMED).map(PathState::name).collect(Collectors.joining(", "));
    int more = paths.size() - MOST_NAMED;
    return more > 0 ? names + " and " + more + " more" : names;
  }

  private static String predicted(List<PathState> paths) {
    List<PathState> over =
        paths.stream().filter(path -> path.forecast().standing() == Standing.OVER).toList();
    return over.isEmpty()
        ? "As predicted, every path keeps its listener's limits."
        : "As predicted, over a limit: " + named(over) + ".";
  }
}
