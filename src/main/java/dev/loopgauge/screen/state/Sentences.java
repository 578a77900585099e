package dev.loopgauge.screen.state;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.screen.state.ScreenState.PathState;
import dev.loopgauge.screen.state.ScreenState.Sentence;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.List;
import java.util.stream.Collectors;

/** The one sentence over all paths. */
final class Sentences {
  private static final int MOST_NAMED = 3;

  private Sentences() {}

  /** What matters most. */
  static Sentence of(List<PathState> paths) {
    List<PathState> measured = paths.stream().filter(path -> path.reading().isPresent()).toList();
    if (measured.isEmpty()) {
      return new Sentence(Judgement.NOT_JUDGED, "Nothing measured yet. " + predicted(paths));
    }
    List<PathState> bad = standing(measured, Judgement.BAD);
    List<PathState> open = standing(measured, Judgement.UNDECIDED);
    if (!bad.isEmpty()) {
      return new Sentence(Judgement.BAD, wrong(bad));
    }
    if (!open.isEmpty()) {
      return new Sentence(Judgement.UNDECIDED, wrong(open));
    }
    return good(paths, measured);
  }

  private static Sentence good(List<PathState> paths, List<PathState> measured) {
    if (measured.size() == paths.size()) {
      String all = paths.size() == 1 ? "The path is" : "All " + paths.size() + " paths are";
      return new Sentence(Judgement.GOOD, all + " within budget and limits.");
    }
    return new Sentence(
        Judgement.GOOD,
        "%d of %d paths measured, within budget and limits. Not measured: %s."
            .formatted(
                measured.size(),
                paths.size(),
                named(paths.stream().filter(path -> path.reading().isEmpty()).toList())));
  }

  private static List<PathState> standing(List<PathState> paths, Judgement judgement) {
    return paths.stream().filter(path -> path.standing() == judgement).toList();
  }

  /** One is told in full, several by their words. */
  private static String wrong(List<PathState> paths) {
    if (paths.size() == 1) {
      PathState path = paths.get(0);
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
