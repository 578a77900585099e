package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.DelayTrend;
import dev.loopgauge.journal.History;
import dev.loopgauge.journal.HistoryPoint;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One path over all shows.
 *
 * @param path the path
 * @param history what its entries tell
 * @param causes what may have made each of its last steps, as many as there are lists
 */
public record HistoryDocument(String path, History history, List<List<Cause>> causes)
    implements Document {
  /** Copies the list. */
  public HistoryDocument {
    causes = List.copyOf(causes);
  }

  @Override
  public String text() {
    return new HistoryText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("journal history", "followed");
    json.put("path", path);
    json.put("sampleRateHz", history.rate().hertz());
    json.put("levelSamples", Written.samples(history.levelSamples()));
    json.put("drift", history.drift().map(HistoryDocument::drift).orElse(null));
    json.put("steps", history.steps().stream().map(this::step).toList());
    json.put("points", history.points().stream().map(HistoryDocument::point).toList());
    return json;
  }

  private static Map<String, Object> drift(DelayTrend drift) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("drifts", drift.isThere());
    json.put("readings", drift.readings());
    json.put("days", Numbers.rounded(drift.days(), 3));
    json.put("samplesPerDay", Numbers.rounded(drift.samplesPerDay(), 6));
    json.put("lowSamplesPerDay", Numbers.rounded(drift.low(), 6));
    json.put("highSamplesPerDay", Numbers.rounded(drift.high(), 6));
    return json;
  }

  /** What may have made a step. */
  List<Cause> causes(History.Step step) {
    int index = history.steps().indexOf(step) - (history.steps().size() - causes.size());
    return index < 0 ? List.of() : causes.get(index);
  }

  private Map<String, Object> step(History.Step step) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("before", step.before().id().toString());
    json.put("after", step.after().id().toString());
    json.put("samples", Written.samples(step.samples()));
    json.put("causes", causes(step).stream().map(Cause::text).toList());
    return json;
  }

  private static Map<String, Object> point(HistoryPoint point) {
    Map<String, Object> json = Logs.json(point.heading());
    json.put("mark", point.mark().label());
    return json;
  }
}
