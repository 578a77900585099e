package dev.loopgauge.report.kind;

import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.patch.PatchDocument;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.report.planned.PlanDocument;
import dev.loopgauge.report.series.SeriesDocument;
import java.util.Map;
import java.util.Optional;

/** A kind of document that can be read again. */
enum Kind {
  ERROR(ErrorDocument.class),
  MEASUREMENT(MeasurementDocument.class),
  CHANNELS(ChannelsDocument.class),
  SOAK(SoakDocument.class),
  TRACK(TrackDocument.class),
  PAIRS(PairsDocument.class),
  PATCH(PatchDocument.class),
  BUDGET(BudgetDocument.class),
  SERIES(SeriesDocument.class),
  PLAN(PlanDocument.class),
  ALIGNMENT(AlignmentDocument.class);

  private final Class<? extends Record> record;

  Kind(Class<? extends Record> record) {
    this.record = record;
  }

  /** The kind that a command makes; empty for a command whose documents aren't read again. */
  static Optional<Kind> of(String command) {
    return switch (command) {
      case "measure", "analyze", "host", "calibrate" -> Optional.of(MEASUREMENT);
      case "soak" -> Optional.of(SOAK);
      case "follow" -> Optional.of(TRACK);
      case "pairs" -> Optional.of(PAIRS);
      case "patch" -> Optional.of(PATCH);
      case "budget" -> Optional.of(BUDGET);
      case "series" -> Optional.of(SERIES);
      case "plan" -> Optional.of(PLAN);
      case "align" -> Optional.of(ALIGNMENT);
      default -> Optional.empty();
    };
  }

  /** The document; empty where something is missing that it can't be without. */
  Optional<Document> read(Map<?, ?> document) {
    return Unbinder.read(record, document).map(Document.class::cast);
  }
}
