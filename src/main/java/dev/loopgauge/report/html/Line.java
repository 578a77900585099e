package dev.loopgauge.report.html;

import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the first screen says of a path, or of another document that is judged.
 *
 * @param name what it is about
 * @param link the part of the page that tells more; empty where there is none
 * @param text what it came to, in a sentence
 */
record Line(Judgement standing, String name, Optional<String> link, String text) {
  /** Of all that is judged, the worst first. */
  static List<Line> of(List<PathStory> paths, List<ReadDocument> readings) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      PathStory path = paths.get(i);
      lines.add(
          new Line(path.standing(), path.name(), Optional.of(pathId(i + 1)), path.sentence()));
    }
    for (int i = 0; i < readings.size(); i++) {
      ReadDocument reading = readings.get(i);
      String id = documentId(i + 1);
      Standings.verdict(reading)
          .filter(verdict -> !reading.measures())
          .ifPresent(verdict -> lines.add(other(reading, verdict, id)));
    }
    lines.sort((one, next) -> Standings.ORDER.compare(one.standing(), next.standing()));
    return lines;
  }

  private static Line other(ReadDocument reading, VerdictRecord verdict, String id) {
    String sentence = Summary.of(reading).orElse("");
    return new Line(
        verdict.standing().orElse(Judgement.NOT_JUDGED),
        reading.path() + ", " + reading.command(),
        reading
            .as(TrackDocument.class)
            .filter(track -> track.track().isEmpty())
            .map(empty -> Optional.<String>empty())
            .orElse(Optional.of(id + "-part")),
        verdict.isGood()
            ? sentence
            : Telling.worst(verdict).map(worst -> sentence + " " + worst).orElse(sentence));
  }

  /** The name of a path's part, by its number from 1. */
  static String pathId(int number) {
    return "path-" + number;
  }

  /** The name that the parts of a document begin with, by its number from 1. */
  static String documentId(int number) {
    return "document-" + number;
  }
}
