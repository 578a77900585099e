package dev.loopgauge.report.html;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.report.planned.ChoiceRecord;
import dev.loopgauge.report.planned.PlanDocument;
import dev.loopgauge.report.series.FitRecord;
import dev.loopgauge.report.series.SeriesDocument;
import java.util.List;
import java.util.Optional;

/** What a document that is no measurement of one return says, in a sentence. */
final class Summary {
  private Summary() {}

  /** The sentence; empty for a measurement, which has its own verdict. */
  static Optional<String> of(ReadDocument reading) {
    if (reading.measures()) {
      return Optional.empty();
    }
    return reading
        .as(ErrorDocument.class)
        .map(error -> reading.source() + ": " + Telling.verdict(reading))
        .or(() -> reading.as(SeriesDocument.class).map(series -> series(series.fit())))
        .or(() -> reading.as(TrackDocument.class).map(Summary::track))
        .or(() -> reading.as(SoakDocument.class).map(SoakDocument::headline))
        .or(() -> reading.as(ChannelsDocument.class).map(Summary::channels))
        .or(() -> reading.as(PairsDocument.class).map(Summary::pairs))
        .or(() -> reading.as(PlanDocument.class).map(plan -> plan(plan.choices())))
        .or(() -> reading.as(AlignmentDocument.class).map(Summary::alignment))
        .or(() -> reading.as(BudgetDocument.class).map(Summary::budget));
  }

  private static String series(FitRecord fit) {
    return "The host runs as "
        + fit.roundedBlocks().map(String::valueOf).orElse("?")
        + (" blocks plus " + Numbers.brief(fit.fixedSamples().doubleValue(), 1) + " samples.");
  }

  private static String track(TrackDocument document) {
    if (document.track().isEmpty()) {
      return "The recording has no delay that can be trusted.";
    }
    return TrackPart.jumps(document.steps());
  }

  private static String channels(ChannelsDocument document) {
    long measured = document.channels().stream().filter(c -> c.measurement().isPresent()).count();
    return measured + " of " + document.channels().size() + " channels measured.";
  }

  private static String pairs(PairsDocument document) {
    return document.measured()
        + (" of " + document.pairs().size() + " pairs of channels have sound in common.");
  }

  private static String plan(List<ChoiceRecord> choices) {
    if (choices.isEmpty()) {
      return "No block size keeps everybody within limits.";
    }
    ChoiceRecord best = choices.get(0);
    return "Block "
        + best.blockSize()
        + (" at " + Numbers.brief(best.sampleRateHz() / 1000.0, 3))
        + " kHz keeps everybody within limits.";
  }

  private static String alignment(AlignmentDocument document) {
    if (document.isGood()) {
      return "The delays to add make the paths of each mix meet.";
    }
    if (document.isBeyondDesk()) {
      return "The desk can't delay every path by as much as it needs.";
    }
    return document.conflicts().isEmpty()
        ? "The delays to add bring a performer's path over its limit."
        : "The delays to add conflict: a path needs two at once.";
  }

  private static String budget(BudgetDocument document) {
    List<String> over =
        document.paths().stream()
            .filter(path -> path.heard().filter(s -> s == Standing.OVER).isPresent())
            .map(PathRecord::name)
            .toList();
    return over.isEmpty()
        ? "By its budget, every path keeps its listener's limit."
        : "By its budget, over its listener's limit: " + Telling.listed(over) + ".";
  }
}
