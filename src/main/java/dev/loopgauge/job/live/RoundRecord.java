package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.NotMeasuredRecord;
import dev.loopgauge.report.measured.RoundDocument;
import dev.loopgauge.report.measured.RoundDocument.Occasion;
import dev.loopgauge.report.measured.RoundPathRecord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a round has come to so far, path by path. */
final class RoundRecord {
  private final KeepChoice keep;
  private final Chain chain;
  private final Map<String, Answer> done = new LinkedHashMap<>();
  private final Map<String, String> failed = new LinkedHashMap<>();

  /** A round of a chain's paths, of which nothing is measured yet. */
  RoundRecord(KeepChoice keep, Chain chain) {
    this.keep = keep;
    this.chain = chain;
  }

  /** The paths that are to be measured: those with a patch but those that were read before. */
  List<ChainPath> due(Map<String, MeasurementDocument> earlier) {
    List<ChainPath> due = new ArrayList<>();
    for (ChainPath path : chain.paths().values()) {
      if (earlier.containsKey(path.name())) {
        done.put(path.name(), Answer.measured(earlier.get(path.name())));
      } else if (path.patch().isPresent()) {
        due.add(path);
      }
    }
    return due;
  }

  /** Whether no path was measured. */
  boolean isEmpty() {
    return done.isEmpty();
  }

  /** A path was measured. */
  void done(String path, Answer answer) {
    done.put(path, answer);
  }

  /** What a path that was measured came to. */
  Answer of(String path) {
    return done.get(path);
  }

  /** A path could not be played or recorded. */
  void failed(String path, String why) {
    failed.put(path, why);
  }

  /**
   * The round as it stands.
   *
   * @param stopped why it ended before its last path, where it did
   */
  Answer answer(Optional<String> stopped) {
    List<RoundPathRecord> paths = new ArrayList<>();
    List<NotMeasuredRecord> missing = new ArrayList<>();
    List<Ending> endings = new ArrayList<>();
    if (!failed.isEmpty()) {
      endings.add(Ending.SOUND_FAILED);
    }
    for (ChainPath path : chain.paths().values()) {
      Answer answer = done.get(path.name());
      if (answer == null) {
        missing.add(new NotMeasuredRecord(path.name(), reason(path, stopped)));
      } else {
        paths.add(RoundPathRecord.of(path.name(), (MeasurementDocument) answer.document()));
        endings.add(answer.ending());
      }
    }
    if (missing.stream().anyMatch(NotMeasuredRecord::wasDue)) {
      endings.add(Ending.OUTSIDE);
    }
    Occasion occasion = new Occasion(keep.show(), keep.when().map(When::label));
    return new Answer(Ending.worst(endings), RoundDocument.of(occasion, stopped, paths, missing));
  }

  private String reason(ChainPath path, Optional<String> stopped) {
    if (path.patch().isEmpty()) {
      return NotMeasuredRecord.NO_PATCH;
    }
    return Optional.ofNullable(failed.get(path.name()))
        .or(() -> stopped)
        .orElse("the round is not there yet");
  }
}
