package dev.loopgauge.job.kept;

import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.html.ReadDocument;
import dev.loopgauge.report.html.ReadDocument.InRound;
import dev.loopgauge.report.measured.NotMeasuredRecord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The paths of a round that was printed as one document. */
final class RoundFile {
  private RoundFile() {}

  /** Each path with its own document; none where the document is no round. */
  static List<ReadDocument> paths(String source, Map<?, ?> round) {
    if (!"round".equals(round.get("command"))) {
      return List.of();
    }
    Optional<When> when =
        Arrays.stream(When.values()).filter(w -> w.label().equals(round.get("when"))).findFirst();
    List<ReadDocument> readings = new ArrayList<>();
    for (Map<?, ?> path : maps(round.get("paths"))) {
      if (path.get("document") instanceof Map<?, ?> document) {
        readings.add(ReadDocument.ofRound(source, document, new InRound(name(path), when)));
      }
    }
    for (Map<?, ?> path : maps(round.get("notMeasured"))) {
      String reason = String.valueOf(path.get("reason"));
      if (!reason.equals(NotMeasuredRecord.NO_PATCH)) {
        readings.add(ReadDocument.ofRound(source, missing(reason), new InRound(name(path), when)));
      }
    }
    return readings;
  }

  /** What stands for a path that was to be measured and was not. */
  private static Map<String, Object> missing(String reason) {
    return ErrorDocument.of(
            "measure",
            "not-measured",
            "not measured: " + reason,
            "measure it with `round --continue`")
        .json();
  }

  private static String name(Map<?, ?> path) {
    return String.valueOf(path.get("path"));
  }

  private static List<Map<?, ?>> maps(Object list) {
    List<Map<?, ?>> maps = new ArrayList<>();
    if (list instanceof List<?> items) {
      for (Object item : items) {
        if (item instanceof Map<?, ?> map) {
          maps.add(map);
        }
      }
    }
    return maps;
  }
}
