package dev.loopgauge.cli;

import dev.loopgauge.report.Document;

/**
 * What a command came to.
 *
 * @param exitCode one of {@link ExitCode}
 * @param document the result, to be printed as text or JSON
 */
record Answer(int exitCode, Document document) {
  /** All good. */
  static Answer good(Document document) {
    return new Answer(ExitCode.GOOD, document);
  }
}
