package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.PathPair.Standing;
import dev.loopgauge.report.form.Document;
import java.util.Comparator;
import java.util.List;

/**
 * The paths of a show beside themselves: before and after, or at another show.
 *
 * @param first what the first measurements are called, such as before
 * @param second what the second ones are called
 * @param same how many paths are as they were
 * @param changed how many aren't
 * @param notCompared how many could not be compared
 * @param paths the paths: those that changed, those that could not be compared, those that are the
 *     same
 */
public record CompareDocument(
    String command,
    String outcome,
    String first,
    String second,
    int same,
    int changed,
    int notCompared,
    List<ComparedRecord> paths)
    implements Document {
  /** What asks for a look comes first. */
  private static final List<Standing> ORDER =
      List.of(Standing.CHANGED, Standing.NOT_COMPARED, Standing.SAME);

  /**
   * A comparison.
   *
   * @param first what the first measurements are called, such as before
   * @param second what the second ones are called
   * @param paths the paths
   */
  public static CompareDocument of(String first, String second, List<Compared> paths) {
    int changed = count(paths, Standing.CHANGED);
    int notCompared = count(paths, Standing.NOT_COMPARED);
    return new CompareDocument(
        "journal compare",
        changed > 0 ? "changed" : notCompared > 0 ? "not-compared" : "same",
        first,
        second,
        count(paths, Standing.SAME),
        changed,
        notCompared,
        paths.stream()
            .sorted(Comparator.comparing(path -> ORDER.indexOf(path.standing())))
            .map(ComparedRecord::of)
            .toList());
  }

  private static int count(List<Compared> paths, Standing standing) {
    return (int) paths.stream().filter(path -> path.standing() == standing).count();
  }

  @Override
  public String text() {
    return new CompareText(this).toString();
  }
}
