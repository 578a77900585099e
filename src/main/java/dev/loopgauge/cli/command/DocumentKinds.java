package dev.loopgauge.cli.command;

import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.DocumentSchema;
import dev.loopgauge.report.html.ReportDocument;
import dev.loopgauge.report.logged.AddDocument;
import dev.loopgauge.report.logged.CheckDocument;
import dev.loopgauge.report.logged.CompareDocument;
import dev.loopgauge.report.logged.EntryDocument;
import dev.loopgauge.report.logged.ExportDocument;
import dev.loopgauge.report.logged.HistoryDocument;
import dev.loopgauge.report.logged.ImportDocument;
import dev.loopgauge.report.logged.JournalListDocument;
import dev.loopgauge.report.logged.RelabelDocument;
import dev.loopgauge.report.logged.RereadDocument;
import dev.loopgauge.report.logged.ShowsDocument;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.report.measured.RoundDocument;
import dev.loopgauge.report.measured.ScreenDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.patch.PatchDocument;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.report.planned.PlanDocument;
import dev.loopgauge.report.rig.CalibrationDocument;
import dev.loopgauge.report.rig.ChainCheckDocument;
import dev.loopgauge.report.rig.DemoDocument;
import dev.loopgauge.report.rig.DevicesDocument;
import dev.loopgauge.report.rig.DraftDocument;
import dev.loopgauge.report.rig.ProfileDocument;
import dev.loopgauge.report.rig.ProfilesDocument;
import dev.loopgauge.report.rig.SignalDocument;
import dev.loopgauge.report.series.SeriesDocument;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchSummary;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The kinds of documents that each command prints with {@code --json}. */
public final class DocumentKinds {
  private DocumentKinds() {}

  /** Text alone: each command's help, and all that `completion` prints. */
  private record Text(String command, String outcome, String text) {}

  /** An export on the screen; its entries are as in files. */
  private record Entries(
      String command,
      String outcome,
      List<Map<String, Object>> entries,
      int written,
      int leftOut) {}

  /**
   * The schema of a command's documents.
   *
   * @param command the command as typed, such as {@code journal list}
   * @return empty where it prints none of its own
   */
  public static Optional<Map<String, Object>> schema(String command) {
    List<Class<? extends Record>> kinds = of(command);
    if (kinds.isEmpty()) {
      return Optional.empty();
    }
    List<Class<? extends Record>> all = new ArrayList<>(kinds);
    all.add(Text.class);
    return Optional.of(DocumentSchema.of(command, List.copyOf(new LinkedHashSet<>(all))));
  }

  private static List<Class<? extends Record>> of(String command) {
    return switch (command) {
      case "budget" -> List.of(BudgetDocument.class);
      case "plan" -> List.of(PlanDocument.class);
      case "align" -> List.of(AlignmentDocument.class);
      case "new" -> List.of(DraftDocument.class);
      case "check" -> List.of(ChainCheckDocument.class);
      case "devices" -> List.of(DevicesDocument.class);
      case "profile save", "profile show", "profile rename" -> List.of(ProfileDocument.class);
      case "profile list", "profile delete" -> List.of(ProfilesDocument.class);
      case "patch" -> List.of(PatchDocument.class);
      case "calibrate" -> List.of(CalibrationDocument.class, MeasurementDocument.class);
      case "measure", "host" -> List.of(MeasurementDocument.class);
      case "analyze" -> List.of(MeasurementDocument.class, ChannelsDocument.class);
      case "round" -> List.of(RoundDocument.class);
      case "soak" -> List.of(SoakDocument.class);
      case "watch" -> List.of(WatchLine.class, WatchSummary.class);
      case "follow" -> List.of(TrackDocument.class);
      case "pairs" -> List.of(PairsDocument.class);
      case "series" -> List.of(SeriesDocument.class);
      case "signal" -> List.of(SignalDocument.class);
      case "report" -> List.of(ReportDocument.keys());
      case "demo" -> List.of(DemoDocument.keys());
      case "screen" -> List.of(ScreenDocument.class);
      case "completion" -> List.of(Text.class);
      default -> journal(command);
    };
  }

  private static List<Class<? extends Record>> journal(String command) {
    return switch (command) {
      case "journal list" -> List.of(JournalListDocument.class, ShowsDocument.class);
      case "journal show" -> List.of(EntryDocument.class);
      case "journal compare" -> List.of(CompareDocument.class);
      case "journal history" -> List.of(HistoryDocument.class);
      case "journal export" -> List.of(ExportDocument.class, Entries.class);
      case "journal import" -> List.of(ImportDocument.class);
      case "journal check" -> List.of(CheckDocument.class);
      case "journal add" -> List.of(AddDocument.class);
      case "journal relabel" -> List.of(RelabelDocument.class);
      case "journal reread" -> List.of(RereadDocument.class);
      default -> List.of();
    };
  }
}
