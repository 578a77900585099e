package dev.loopgauge.cli.terminal;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.verify.HostCheck;

/**
 * What a command came to.
 *
 * @param exitCode one of {@link ExitCode}
 * @param document the result, to be printed as text or JSON
 */
public record Answer(int exitCode, Document document) {
  /** All good. */
  public static Answer good(Document document) {
    return new Answer(ExitCode.GOOD, document);
  }

  /** A measurement, with the exit code of its outcome and of its host check. */
  public static Answer measured(MeasurementDocument document) {
    return switch (document.outcome()) {
      case MEASURED, WITHIN_BUDGET ->
          document.hostCheck().filter(HostCheck::fails).isPresent()
              ? new Answer(ExitCode.OUTSIDE, document)
              : good(document);
      case OUTSIDE_BUDGET, UNDECIDED -> new Answer(ExitCode.OUTSIDE, document);
      case NOT_TRUSTWORTHY -> new Answer(ExitCode.NOT_TRUSTWORTHY, document);
    };
  }

  /** Several channels, with the exit code of the worst. */
  public static Answer channels(ChannelsDocument document) {
    int worst =
        document.channels().stream()
            .mapToInt(c -> measured(c.document()).exitCode())
            .max()
            .orElse(0);
    return new Answer(worst, document);
  }
}
