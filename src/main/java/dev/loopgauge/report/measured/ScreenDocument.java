package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.List;
import java.util.Optional;

/**
 * How the rig stood when its screen was closed.
 *
 * @param outcome {@code ended}
 * @param standing the worst that a path stood at; {@code not-judged} where none was measured
 * @param line that in one sentence
 * @param paths how each path stood
 */
public record ScreenDocument(
    String command,
    String outcome,
    Optional<Judgement> standing,
    Optional<String> line,
    List<ShownPathRecord> paths)
    implements Document {
  /** A path as the screen showed it, in a word or two. */
  public record ShownPathRecord(String path, Optional<Judgement> standing, String word) {}

  /** How it stood. */
  public static ScreenDocument of(Judgement standing, String line, List<ShownPathRecord> paths) {
    return new ScreenDocument(
        "screen", "ended", Optional.of(standing), Optional.of(line), List.copyOf(paths));
  }

  /** Whether nothing that was measured is bad or undecided. */
  public boolean isGood() {
    return !standing.equals(Optional.of(Judgement.BAD))
        && !standing.equals(Optional.of(Judgement.UNDECIDED));
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(line.orElse("The screen was closed."));
    paths.forEach(path -> sheet.row(path.path(), path.word()));
    return sheet.toString();
  }
}
