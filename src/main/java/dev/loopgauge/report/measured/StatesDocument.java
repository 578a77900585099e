package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import dev.loopgauge.verify.Shift;
import dev.loopgauge.verify.StateCheck;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plug-in in one state after another.
 *
 * @param measured the state that matters as a measurement, with its budget and host check
 * @param states every state in the order they were read, at least one
 */
public record StatesDocument(MeasurementDocument measured, List<StateCheck> states)
    implements Document {
  private static final int SAMPLE_DECIMALS = 4;

  /** Copies the list. */
  public StatesDocument {
    states = List.copyOf(states);
  }

  /** Whether each state adds what is reported in it. */
  public boolean isAsReported() {
    return states.stream().noneMatch(StateCheck::fails);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(verdict());
    states.forEach(state -> sheet.row(state.reading().state(), told(state)));
    states.stream()
        .filter(StateCheck::movedOthers)
        .forEach(state -> sheet.row("others", others(state)));
    sheet.gap();
    return sheet.block(measured.text()).toString();
  }

  private String verdict() {
    List<String> failing =
        states.stream().filter(StateCheck::fails).map(state -> state.reading().state()).toList();
    if (!failing.isEmpty()) {
      return "NOT AS REPORTED when " + String.join(", ", failing) + ".";
    }
    boolean reported = states.stream().anyMatch(state -> state.reading().reported().isPresent());
    return reported
        ? "AS REPORTED in each of %d states.".formatted(states.size())
        : "MEASURED in %d states; nothing is reported in any.".formatted(states.size());
  }

  private String told(StateCheck state) {
    List<String> parts = new ArrayList<>();
    parts.add(Figures.delay(state.reading().path()));
    state
        .path()
        .filter(shift -> !state.host().map(h -> saysTheSame(h, shift)).orElse(false))
        .ifPresent(shift -> parts.add(moved(shift)));
    state.host().map(HostCheckLines::text).ifPresent(parts::add);
    return String.join("; ", parts);
  }

  private static boolean saysTheSame(HostCheck host, Shift shift) {
    return host.measuredSamples() == shift.samples();
  }

  private String moved(Shift shift) {
    return (shift.moved() ? figure(shift) + " samples against " : "the same as ") + base();
  }

  /** The state that the others are held against. */
  private String base() {
    return states.stream()
        .filter(state -> state.path().isEmpty())
        .map(state -> state.reading().state())
        .findFirst()
        .orElseThrow();
  }

  private static String figure(Shift shift) {
    return Numbers.signedPlusMinus(shift.samples(), shift.uncertaintySamples(), 3);
  }

  private static String others(StateCheck state) {
    return "when %s, the other channel is %s samples later too: the host pads it to match"
        .formatted(state.reading().state(), state.witness().map(StatesDocument::figure).orElse(""));
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = new LinkedHashMap<>(measured.json());
    json.put("states", states.stream().map(StatesDocument::state).toList());
    return json;
  }

  private static Map<String, Object> state(StateCheck check) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("state", check.reading().state());
    json.put("delaySamples", samples(check.reading().path().delay().samples()));
    json.put(
        "uncertaintySamples",
        Numbers.roundedUp(check.reading().path().uncertaintySamples(), SAMPLE_DECIMALS));
    json.put(
        "reportedSamples",
        check
            .reading()
            .reported()
            .map(ReportedDelay::samples)
            .map(StatesDocument::samples)
            .orElse(null));
    json.put("movedSamples", moved(check.path()));
    json.put("othersMovedSamples", moved(check.witness()));
    json.put("hostCheck", check.host().map(HostCheckLines::json).orElse(null));
    return json;
  }

  private static Object moved(Optional<Shift> shift) {
    return shift.map(Shift::samples).map(StatesDocument::samples).orElse(null);
  }

  private static Object samples(double samples) {
    return Numbers.rounded(samples, SAMPLE_DECIMALS);
  }
}
