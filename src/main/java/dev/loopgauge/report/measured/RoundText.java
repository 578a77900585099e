package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A round as text: the verdict over all, then what is wrong path by path, then all paths. */
record RoundText(
    Judgement standing,
    Optional<String> stopped,
    List<RoundPathRecord> paths,
    List<NotMeasuredRecord> notMeasured) {
  private static final int MOST_NAMED = 4;

  String tell() {
    Sheet sheet = new Sheet().line(headline());
    for (Judgement worse : List.of(Judgement.BAD, Judgement.UNDECIDED)) {
      paths.stream()
          .filter(path -> path.stands(worse))
          .forEach(path -> sheet.row(path.path(), path.document().line()));
    }
    notMeasured.stream()
        .filter(NotMeasuredRecord::wasDue)
        .forEach(path -> sheet.row(path.path(), "not measured: " + path.reason()));
    if (!paths.isEmpty()) {
      sheet.gap();
      table().tell(paths, sheet);
    }
    List<String> unpatched = unpatched();
    if (!unpatched.isEmpty()) {
      sheet.row("no patch", String.join(", ", unpatched));
    }
    return sheet.toString();
  }

  /** The worst first; paths that have no patch are counted last. */
  private String headline() {
    List<String> parts = new ArrayList<>();
    stopped.ifPresent(why -> parts.add("STOPPED: " + why));
    parts.add(judged());
    if (!unpatched().isEmpty()) {
      parts.add(unpatched().size() + " without a patch");
    }
    return String.join("; ", parts) + ".";
  }

  private String judged() {
    List<String> parts = new ArrayList<>();
    named(Judgement.BAD).ifPresent(names -> parts.add("NOT GOOD: " + names));
    named(Judgement.UNDECIDED).ifPresent(names -> parts.add("UNDECIDED: " + names));
    long missing = notMeasured.stream().filter(NotMeasuredRecord::wasDue).count();
    if (missing > 0) {
      parts.add("NOT MEASURED: " + counted(missing));
    }
    long good = paths.stream().filter(path -> path.stands(Judgement.GOOD)).count();
    if (parts.isEmpty()) {
      return paths.isEmpty()
          ? "NOTHING MEASURED"
          : "GOOD: all " + counted(good) + " measured as they should be";
    }
    return String.join("; ", parts) + "; good: " + counted(good);
  }

  private static String counted(long count) {
    return count == 1 ? "1 path" : count + " paths";
  }

  private Optional<String> named(Judgement judgement) {
    List<String> names =
        paths.stream().filter(path -> path.stands(judgement)).map(RoundPathRecord::path).toList();
    String more = names.size() > MOST_NAMED ? ", " + (names.size() - MOST_NAMED) + " more" : "";
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(names.stream().limit(MOST_NAMED).collect(Collectors.joining(", ")) + more);
  }

  private List<String> unpatched() {
    return notMeasured.stream()
        .filter(path -> !path.wasDue())
        .map(NotMeasuredRecord::path)
        .toList();
  }

  private static Table<RoundPathRecord> table() {
    return new Table<RoundPathRecord>()
        .words("path", RoundPathRecord::path)
        .figures("samples", path -> figure(path, ShownDelay::bareSamples))
        .figures("±", path -> figure(path, ShownDelay::uncertainty))
        .figures("ms", path -> figure(path, ShownDelay::bareMs))
        .words("standing", path -> path.standing().map(RoundText::label).orElse("-"));
  }

  private static String label(Judgement judgement) {
    return judgement.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String figure(RoundPathRecord path, Function<ShownDelay, String> part) {
    return path.document().delay().map(part).orElse("-");
  }
}
