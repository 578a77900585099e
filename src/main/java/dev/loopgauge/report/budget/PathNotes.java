package dev.loopgauge.report.budget;

import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Sheet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What there is to know of single paths, kind by kind, what to act on first. */
final class PathNotes {
  /** The most sentences of one kind. */
  private static final int MOST_OF_A_KIND = 6;

  private record Note(PathRecord path, String text) {}

  private final List<PathRecord> paths;
  private final Excerpt excerpt;
  private final Sheet sheet;

  private PathNotes(List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    this.paths = paths;
    this.excerpt = excerpt;
    this.sheet = sheet;
  }

  /** Tells them. */
  static void tell(List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    PathNotes notes = new PathNotes(paths, excerpt, sheet);
    notes.kind(PathNotes::judged).forEach(note -> sheet.row("judged", note));
    List<Function<PathRecord, Optional<String>>> kinds =
        List.of(
            PathNotes::feed,
            path -> path.returnsToTalker().map(TalkerRecord::told),
            path -> path.guidance().map(row -> row.told(path.delayMs())),
            PathNotes::ownVoice,
            path -> path.directSound().map(sound -> sound.told(path.listener())));
    kinds.forEach(kind -> notes.kind(kind).forEach(sheet::line));
    notes.pictures();
  }

  /** The sentences of a kind, with the names of the paths that they are true of. */
  private List<String> kind(Function<PathRecord, Optional<String>> kind) {
    List<Note> notes =
        paths.stream()
            .flatMap(path -> kind.apply(path).map(text -> new Note(path, text)).stream())
            .toList();
    Excerpt.Part<Note> part =
        excerpt.of(
            notes,
            MOST_OF_A_KIND,
            Note::text,
            Comparator.comparing(Note::path, PathTable.worstFirst()));
    List<String> told = part.shown().stream().map(PathNotes::sentence).toList();
    return part.hidden() == 0
        ? told
        : Stream.concat(told.stream(), Stream.of("And " + part.hidden() + " more such notes."))
            .toList();
  }

  private static String sentence(Alike<Note> note) {
    return note.names(one -> one.path().name()) + ": " + note.first().text();
  }

  private static Optional<String> judged(PathRecord path) {
    return path.standsOtherwiseByItsDelay()
        ? path.judged().map(JudgedRecord::told)
        : Optional.empty();
  }

  private static Optional<String> feed(PathRecord path) {
    return path.earlierFeed()
        .map(feed -> feed.told(path.delayMs(), path.inWords(feed.standing(), feed.delayMs())));
  }

  /** A path of no stated instrument may be a singer's too. */
  private static Optional<String> ownVoice(PathRecord path) {
    return path.ownVoice()
        .flatMap(NullsRecord::firstNullHz)
        .map(
            first ->
                (path.guidance().isPresent() ? "own" : "a singer's own")
                    + (" voice: bone plus in-ears comb from " + Combs.hz(Optional.of(first)))
                    + ".");
  }

  private void pictures() {
    excerpt
        .of(
            paths.stream().filter(path -> path.picture().isPresent()).toList(),
            MOST_OF_A_KIND,
            path -> path.picture().orElseThrow(),
            PathTable.worstFirst())
        .shown()
        .forEach(
            row ->
                row.first()
                    .picture()
                    .ifPresent(picture -> picture(row.names(PathRecord::name), picture)));
  }

  private void picture(String names, PictureRecord picture) {
    String name = picture.name().map(n -> ", picture " + n).orElse("");
    sheet.line(names + name + ": " + picture.told());
    sheet.line("  " + picture.advice());
    picture.closest().ifPresent(block -> sheet.line("  " + block));
  }
}
