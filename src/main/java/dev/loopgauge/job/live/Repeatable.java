package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.result.Estimate;
import java.util.List;

/** A measurement that can be made again and again, by the same way, without asking. */
interface Repeatable {
  /** Plays, records and reads once. */
  Estimate take() throws CaptureException;

  /** What it takes for granted, one sentence each. */
  default List<String> notes() {
    return List.of();
  }
}
