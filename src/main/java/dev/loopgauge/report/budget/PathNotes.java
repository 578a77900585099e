package dev.loopgauge.report.budget;

import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Sheet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What there is to know of single paths, kind by kind, what to act on first. */
final class PathNotes {
  /** The most sentences of one kind. */
  private static final int MOST_OF_A_KIND = 6;

  /** In the order in which they are told. */
  private enum Kind {
    JUDGED,
    FEED,
    TALKER,
    GUIDANCE,
    OWN_VOICE,
    DIRECT_SOUND
  }

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
    for (Kind kind : Kind.values()) {
      notes.tell(kind);
    }
    notes.pictures();
  }

  /** The sentences of a kind, with the names of the paths that they are true of. */
  private void tell(Kind kind) {
    Comparator<PathRecord> worst = PathTable.worstFirst();
    Excerpt.Part<Note> part =
        excerpt.of(
            notes(kind),
            MOST_OF_A_KIND,
            Note::text,
            (one, other) -> worst.compare(one.path(), other.path()));
    for (Alike<Note> note : part.shown()) {
      tell(kind, note.names(one -> one.path().name()) + ": " + note.first().text());
    }
    if (part.hidden() > 0) {
      tell(kind, "And " + part.hidden() + " more such notes.");
    }
  }

  private void tell(Kind kind, String sentence) {
    if (kind == Kind.JUDGED) {
      sheet.row("judged", sentence);
    } else {
      sheet.line(sentence);
    }
  }

  private List<Note> notes(Kind kind) {
    List<Note> notes = new ArrayList<>();
    for (PathRecord path : paths) {
      String text = text(kind, path);
      if (!text.isEmpty()) {
        notes.add(new Note(path, text));
      }
    }
    return notes;
  }

  /** The words of a kind of note; none where the path gives no reason for it. */
  private static String text(Kind kind, PathRecord path) {
    return switch (kind) {
      case JUDGED -> path.standsOtherwiseByItsDelay() ? path.judged().get().told() : "";
      case FEED -> path.earlierFeed().isPresent() ? feed(path, path.earlierFeed().get()) : "";
      case TALKER -> path.returnsToTalker().isPresent() ? path.returnsToTalker().get().told() : "";
      case GUIDANCE ->
          path.guidance().isPresent() ? path.guidance().get().told(path.delayMs()) : "";
      case OWN_VOICE -> path.ownVoice().isPresent() ? ownVoice(path, path.ownVoice().get()) : "";
      case DIRECT_SOUND ->
          path.directSound().isPresent() ? path.directSound().get().told(path.listener()) : "";
    };
  }

  private static String feed(PathRecord path, FeedRecord feed) {
    return feed.told(path.delayMs(), path.inWords(feed.standing(), feed.delayMs()));
  }

  /** A path of no stated instrument may be a singer's too. */
  private static String ownVoice(PathRecord path, NullsRecord nulls) {
    String whose = path.guidance().isPresent() ? "own" : "a singer's own";
    return nulls.firstNullHz().isPresent()
        ? whose + " voice: bone plus in-ears comb from " + Combs.hz(nulls.firstNullHz()) + "."
        : "";
  }

  private void pictures() {
    List<PathRecord> seen = new ArrayList<>();
    for (PathRecord path : paths) {
      if (path.picture().isPresent()) {
        seen.add(path);
      }
    }
    Excerpt.Part<PathRecord> part =
        excerpt.of(seen, MOST_OF_A_KIND, PathRecord::picture, PathTable.worstFirst());
    for (Alike<PathRecord> row : part.shown()) {
      picture(row.names(PathRecord::name), row.first().picture().orElseThrow());
    }
  }

  private void picture(String names, PictureRecord picture) {
    String name = picture.name().isPresent() ? ", picture " + picture.name().get() : "";
    sheet.line(names + name + ": " + picture.told());
    sheet.line("  " + picture.advice());
    Optional<String> closest = picture.closest();
    if (closest.isPresent()) {
      sheet.line("  " + closest.get());
    }
  }
}
