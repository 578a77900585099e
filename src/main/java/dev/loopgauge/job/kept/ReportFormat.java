package dev.loopgauge.job.kept;

/** How a report is written. */
public enum ReportFormat {
  /** A page for a browser. */
  HTML,
  /** One document for scripts. */
  JSON,
  /** A row for each measurement. */
  CSV,
  /** Lines for a terminal. */
  TEXT;
}
