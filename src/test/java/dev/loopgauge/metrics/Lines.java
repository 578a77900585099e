package dev.loopgauge.metrics;

import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.watch.Happening;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchedDelay;
import dev.loopgauge.verify.watch.PathStatus;
import dev.loopgauge.verify.watch.WatchEvent;
import java.math.BigDecimal;
import java.util.Optional;

/** Lines as a watch hands them on. */
public final class Lines {
  private Lines() {}

  /** A path whose delay is read. */
  static WatchLine read(String path, String ms, String uncertaintyMs) {
    BigDecimal delay = new BigDecimal(ms);
    BigDecimal uncertainty = new BigDecimal(uncertaintyMs);
    BigDecimal samplesPerMs = BigDecimal.valueOf(48);
    return state(
        path,
        PathStatus.State.READ,
        new WatchedDelay(
            Optional.of(48_000),
            Optional.of(delay.multiply(samplesPerMs)),
            Optional.of(delay),
            Optional.of(uncertainty.multiply(samplesPerMs)),
            Optional.of(uncertainty),
            Optional.of(2),
            Optional.of(Polarity.NORMAL),
            Optional.of(new BigDecimal("-6.0"))));
  }

  /** A path of which nothing is read. */
  static WatchLine silent(String path) {
    return state(path, PathStatus.State.NO_PROGRAMME, WatchedDelay.NONE);
  }

  private static WatchLine state(String path, PathStatus.State state, WatchedDelay read) {
    return line(path, WatchLine.Event.STATE, Optional.empty(), Optional.of(state), read);
  }

  /** An event that starts or ends. */
  public static WatchLine event(String path, WatchLine.Event kind, WatchEvent.Phase phase) {
    return line(path, kind, Optional.of(phase), Optional.empty(), WatchedDelay.NONE);
  }

  private static WatchLine line(
      String path,
      WatchLine.Event kind,
      Optional<WatchEvent.Phase> phase,
      Optional<PathStatus.State> state,
      WatchedDelay read) {
    return new WatchLine(
        "watch",
        Outcome.MEASURED,
        kind,
        phase,
        "2026-11-28T21:14:03.000+00:00",
        new BigDecimal("843.000"),
        Optional.of(path),
        state,
        Optional.empty(),
        read,
        Happening.NONE,
        Optional.empty(),
        Optional.empty());
  }
}
