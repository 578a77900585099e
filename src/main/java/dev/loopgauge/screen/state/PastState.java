package dev.loopgauge.screen.state;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.logged.HistoryDocument;
import dev.loopgauge.report.logged.ListedRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the journal knows of a path.
 *
 * @param before how it is now against before the show, in words
 * @param rows its last entries, the last one first
 * @param steps where its delay went to another level, in words
 */
public record PastState(Optional<String> before, List<Row> rows, List<String> steps) {
  private static final int MOST_ROWS = 8;
  private static final int MINUTE = 16;

  /** An entry. */
  public record Row(String at, String show, String when, String figure, String outcome) {}

  /** Of a history. */
  public static PastState of(HistoryDocument history, Optional<String> before) {
    List<Row> rows = new ArrayList<>();
    for (int i = history.points().size() - 1; i >= 0 && rows.size() < MOST_ROWS; i--) {
      rows.add(row(history.points().get(i).listed()));
    }
    List<String> steps =
        history.steps().stream().map(step -> told(step, history.sampleRateHz())).toList();
    return new PastState(before, rows, steps);
  }

  private static Row row(ListedRecord listed) {
    String figure = listed.delayMs().map(ms -> Numbers.inMs(ms, 3)).orElse("no trustworthy number");
    return new Row(
        listed.at().substring(0, Math.min(MINUTE, listed.at().length())).replace('T', ' '),
        listed.show(),
        listed.when().label(),
        figure,
        listed.outcome().replace('-', ' '));
  }

  private static String told(HistoryDocument.StepRecord step, int rateHz) {
    double samples = step.samples().doubleValue();
    String by =
        "%s samples (%s ms)"
            .formatted(Numbers.signed(samples, 1), Numbers.signed(samples * 1000 / rateHz, 3));
    return step.causes().isEmpty() ? by : by + ": " + String.join("; ", step.causes());
  }
}
