package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.verify.Shift;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A plug-in in one state after another, as text.
 *
 * @param states every state in the order they were read, at least one
 */
record StatesText(List<StateRecord> states) {
  private static final int MOST_DECIMALS = 3;

  /** Tells whether all is as reported, then each state. */
  void tell(Sheet sheet) {
    sheet.line(verdict());
    states.forEach(state -> sheet.row(state.state(), told(state)));
    states.forEach(
        state -> state.movedOthers().ifPresent(by -> sheet.row("others", others(state, by))));
  }

  private String verdict() {
    List<String> failing =
        states.stream().filter(StateRecord::fails).map(StateRecord::state).toList();
    if (!failing.isEmpty()) {
      return "NOT AS REPORTED when " + String.join(", ", failing) + ".";
    }
    return states.stream().anyMatch(state -> state.reportedSamples().isPresent())
        ? "AS REPORTED in each of " + states.size() + " states."
        : "MEASURED in " + states.size() + " states; nothing is reported in any.";
  }

  private String told(StateRecord state) {
    List<String> parts = new ArrayList<>();
    parts.add(
        Numbers.plusMinus(
                state.delaySamples().doubleValue(),
                state.uncertaintySamples().doubleValue(),
                MOST_DECIMALS)
            + " samples");
    Optional<BigDecimal> checked = state.hostCheck().flatMap(HostCheckRecord::measuredSamples);
    if (!checked.equals(state.movedSamples())) {
      state.moved().ifPresent(shift -> parts.add(moved(shift)));
    }
    state.hostCheck().flatMap(HostCheckRecord::text).ifPresent(parts::add);
    return String.join("; ", parts);
  }

  private String moved(Shift shift) {
    return (shift.moved() ? figure(shift) + " samples against " : "the same as ") + base();
  }

  /** The state that the others are compared with. */
  private String base() {
    return states.stream()
        .filter(state -> state.movedSamples().isEmpty())
        .map(StateRecord::state)
        .findFirst()
        .orElse("the first");
  }

  private static String figure(Shift shift) {
    return Numbers.signedPlusMinus(shift.samples(), shift.uncertaintySamples(), MOST_DECIMALS);
  }

  private static String others(StateRecord state, Shift by) {
    return "when %s, the other channel is %s samples later too: the host pads it to match"
        .formatted(state.state(), figure(by));
  }
}
