package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Every path of a chain file, measured in one go.
 *
 * @param outcome the worst that a path's delay came to
 * @param standing the worst that a path stands at; paths that were not to be measured don't count
 * @param show the show, where the round is kept
 * @param when the part of its day
 * @param stopped why the round ended before its last path; null where it didn't
 * @param paths each path that was measured, in the order of the round
 * @param notMeasured each path that was not, and why
 */
public record RoundDocument(
    String command,
    Outcome outcome,
    Optional<Judgement> standing,
    Optional<String> show,
    Optional<String> when,
    Optional<String> stopped,
    List<RoundPathRecord> paths,
    List<NotMeasuredRecord> notMeasured)
    implements Document, Sparse {
  /** Which show a round belongs to. */
  public record Occasion(Optional<String> show, Optional<String> when) {}

  /** A round of some paths. */
  public static RoundDocument of(
      Occasion occasion,
      Optional<String> stopped,
      List<RoundPathRecord> paths,
      List<NotMeasuredRecord> notMeasured) {
    return new RoundDocument(
        "round",
        paths.stream()
            .map(path -> path.document().outcome())
            .max(Enum::compareTo)
            .orElse(Outcome.NOT_TRUSTWORTHY),
        Optional.of(standing(paths, notMeasured)),
        occasion.show(),
        occasion.when(),
        stopped,
        List.copyOf(paths),
        List.copyOf(notMeasured));
  }

  private static Judgement standing(
      List<RoundPathRecord> paths, List<NotMeasuredRecord> notMeasured) {
    Judgement measured =
        Judgement.worst(paths.stream().flatMap(path -> path.standing().stream()).toList());
    boolean missing = notMeasured.stream().anyMatch(NotMeasuredRecord::wasDue);
    return missing ? Judgement.worst(List.of(measured, Judgement.UNDECIDED)) : measured;
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("show", "when");
  }

  @Override
  public String text() {
    return new RoundText(standing.orElse(Judgement.NOT_JUDGED), stopped, paths, notMeasured).tell();
  }
}
