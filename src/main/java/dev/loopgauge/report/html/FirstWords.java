package dev.loopgauge.report.html;

import dev.loopgauge.verify.verdict.Judgement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a report says first.
 *
 * @param lines what is judged, the worst first
 * @param others what the documents say that are not judged, a sentence each
 */
record FirstWords(List<PathStory> paths, List<Line> lines, List<String> others) {
  private static final int MOST_NAMED = 4;

  /** Of all readings. */
  static FirstWords of(List<PathStory> paths, List<ReadDocument> readings) {
    return new FirstWords(
        paths,
        Line.of(paths, readings),
        readings.stream()
            .filter(reading -> Standings.verdict(reading).isEmpty())
            .flatMap(reading -> Summary.of(reading).stream())
            .toList());
  }

  /** The first sentence of the report. */
  String lead() {
    if (lines.isEmpty()) {
      return others.isEmpty() ? "Nothing was measured." : others.get(0);
    }
    Line first = lines.get(0);
    return (lines.size() == 1
            ? Escaping.shortened(first.name(), 80) + ": " + Escaping.shortened(first.text(), 1_000)
            : counted())
        + changed();
  }

  private String counted() {
    List<String> parts = new ArrayList<>();
    for (Judgement judgement : Standings.WORST_FIRST) {
      List<String> names = standing(judgement).stream().map(Line::name).toList();
      if (!names.isEmpty()) {
        parts.add(part(judgement, names));
      }
    }
    String all = String.join(" ", parts);
    return Character.toUpperCase(all.charAt(0)) + all.substring(1);
  }

  private String part(Judgement judgement, List<String> names) {
    String word = Standings.word(judgement);
    String start = Character.toUpperCase(word.charAt(0)) + word.substring(1) + ": ";
    boolean calm = judgement == Judgement.GOOD || judgement == Judgement.NOT_JUDGED;
    if (calm && names.size() == lines.size()) {
      return start + "all " + names.size() + ".";
    }
    return start + (calm ? names.size() + " of " + lines.size() : named(names)) + ".";
  }

  /** What stands so. */
  List<Line> standing(Judgement judgement) {
    return lines.stream().filter(line -> line.standing() == judgement).toList();
  }

  private String changed() {
    List<String> moved = changedPaths().stream().map(PathStory::name).toList();
    String missing =
        missingAfter().isEmpty() ? "" : " Not measured after: " + named(missingAfter()) + ".";
    if (compared() == 0) {
      return missing;
    }
    return (moved.isEmpty()
            ? " Nothing changed from before to after."
            : " Changed from before to after: " + named(moved) + ".")
        + missing;
  }

  /** How many paths were measured both before and after. */
  long compared() {
    return paths.stream().filter(path -> path.shift().isPresent()).count();
  }

  /** The paths that are not as they were. */
  List<PathStory> changedPaths() {
    return paths.stream()
        .filter(path -> path.shift().filter(BeforeAndAfter::changed).isPresent())
        .toList();
  }

  /** The paths that were measured before and not again, where others were. */
  List<String> missingAfter() {
    return compared() == 0
        ? List.of()
        : paths.stream().filter(PathStory::isMissingAfter).map(PathStory::name).toList();
  }

  /** The part of the page that a path has. */
  Optional<String> link(PathStory path) {
    return Optional.of(Line.pathId(paths.indexOf(path) + 1));
  }

  /** Some names in a sentence. */
  private static String named(List<String> names) {
    int shown = Math.min(MOST_NAMED, names.size());
    String more = names.size() > shown ? " and " + (names.size() - shown) + " more" : "";
    return Telling.listed(names.subList(0, shown)) + more;
  }
}
