package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.PathPair.Standing;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Shift;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The paths of a show beside themselves: before and after, or at another show.
 *
 * @param first what the first measurements are called, such as before
 * @param second what the second ones are called
 * @param paths the paths
 */
public record CompareDocument(String first, String second, List<Compared> paths)
    implements Document {
  /** Copies the list. */
  public CompareDocument {
    paths = List.copyOf(paths);
  }

  /** How many paths stand so. */
  public long count(Standing standing) {
    return paths.stream().filter(path -> path.pair().standing() == standing).count();
  }

  @Override
  public String text() {
    return new CompareText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("journal compare", outcome());
    json.put("first", first);
    json.put("second", second);
    json.put("same", count(Standing.SAME));
    json.put("changed", count(Standing.CHANGED));
    json.put("notCompared", count(Standing.NOT_COMPARED));
    json.put("paths", paths.stream().map(CompareDocument::path).toList());
    return json;
  }

  private String outcome() {
    if (count(Standing.CHANGED) > 0) {
      return "changed";
    }
    return count(Standing.NOT_COMPARED) > 0 ? "not-compared" : "same";
  }

  private static Map<String, Object> path(Compared path) {
    PathPair pair = path.pair();
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", pair.path().orElse(null));
    json.put("standing", label(pair.standing()));
    json.put("first", pair.first().map(Logs::json).orElse(null));
    json.put("second", pair.second().map(Logs::json).orElse(null));
    Shift shift = pair.shift().orElse(null);
    Latency later = pair.later().orElse(null);
    double uncertainty = shift == null ? 0 : shift.uncertaintySamples();
    double uncertainMs = later == null ? 0 : uncertainty * 1000 / later.rate().hertz();
    json.put(
        "differenceSamples", later == null ? null : Written.samples(later.samples(), uncertainty));
    json.put("differenceMs", later == null ? null : Written.ms(later.ms(), uncertainMs));
    json.put("uncertaintySamples", shift == null ? null : Written.uncertainSamples(uncertainty));
    json.put("causes", path.causes().stream().map(CompareDocument::cause).toList());
    return json;
  }

  private static String label(Standing standing) {
    return switch (standing) {
      case SAME -> "same";
      case CHANGED -> "changed";
      case NOT_COMPARED -> "not-compared";
    };
  }

  private static Map<String, Object> cause(Cause cause) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("cause", cause.name());
    json.put("text", cause.text());
    json.put("standing", cause.standing().label());
    return json;
  }

  /** Why a path could not be compared. */
  String missing(PathPair pair) {
    if (pair.first().isEmpty()) {
      return "not measured " + first;
    }
    if (pair.second().isEmpty()) {
      return "not measured " + second;
    }
    boolean neither =
        pair.first().flatMap(Heading::delay).isEmpty()
            && pair.second().flatMap(Heading::delay).isEmpty();
    String side = pair.first().flatMap(Heading::delay).isEmpty() ? first : second;
    return "no trustworthy number " + (neither ? first + " nor " + second : side);
  }
}
