package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The budget as text: a table of paths, or of the stages of each. */
final class BudgetText {
  private final Sheet sheet = new Sheet();

  BudgetText(BudgetDocument document) {
    BudgetVerdict.tell(document, sheet);
    sheet.line(title(document.chain()));
    sheet.gap();
    if (document.withStages()) {
      document.paths().forEach(this::stages);
    } else {
      paths(document.paths());
    }
    document.paths().forEach(path -> PathNotes.of(document.chain(), path).tell(sheet));
    pictures(document);
    sheet.gap();
    document.inputs().forEach(input -> Destinations.tell(input, sheet));
    document.mixes().forEach(mix -> Mixes.tell(mix, sheet));
    limits(document.paths());
    if (!document.withStages()) {
      sheet.gap();
      sheet.line(
          "Metres, feet: as if the wedge, loudspeaker or source stood so much further away.");
      sheet.line("Stage by stage: --path NAME.");
    }
  }

  private static String title(Chain chain) {
    List<String> parts = new ArrayList<>();
    parts.add(chain.name());
    parts.add(Numbers.brief(chain.rate().hertz() / 1000.0, 4) + " kHz");
    if (chain.countsBlocks()) {
      parts.add("block " + chain.blockSize());
    }
    parts.add(Numbers.brief(chain.airTemperatureC(), 1) + " °C");
    return String.join(" · ", parts);
  }

  private void paths(List<PathBudget> paths) {
    new Table<PathBudget>()
        .words("path", PathBudget::name)
        .words("listener", path -> path.listener().label())
        .figures("ms", path -> Numbers.plain(path.delay().ms(), 3))
        .figures("samples", path -> samples(path.delay()))
        .figures("±", path -> Numbers.brief(path.toleranceSamples(), 2))
        .figures("metres", path -> Numbers.plain(path.equivalentMetres(), 2))
        .figures("feet", path -> Numbers.plain(path.equivalentFeet(), 1))
        .words("standing", Standings::of)
        .lines(paths)
        .forEach(sheet::asIs);
    sheet.gap();
  }

  private void stages(PathBudget path) {
    sheet.line(path.name() + ", " + path.listener().label() + ": " + Standings.of(path));
    List<StageDelay> rows = new ArrayList<>(path.stages());
    rows.add(new StageDelay("(whole path)", path.delay(), path.toleranceSamples()));
    rows.add(new StageDelay("(loop by cable)", path.loop(), path.loopToleranceSamples()));
    new Table<StageDelay>()
        .words("stage", StageDelay::name)
        .figures("ms", row -> Numbers.plain(row.delay().ms(), 3))
        .figures("samples", row -> samples(row.delay()))
        .figures("±", row -> Numbers.brief(row.toleranceSamples(), 2))
        .lines(rows)
        .forEach(sheet::asIs);
    sheet.line("As if " + speaker(path.listener()) + " stood " + distance(path) + " further away.");
    sheet.gap();
  }

  private static String speaker(Listener listener) {
    return switch (listener) {
      case WEDGE -> "the wedge";
      case HOUSE -> "the loudspeakers";
      case IN_EAR, STREAM -> "the source";
    };
  }

  private static String distance(PathBudget path) {
    return Numbers.plain(path.equivalentMetres(), 2)
        + " m ("
        + Numbers.plain(path.equivalentFeet(), 1)
        + " ft)";
  }

  private void pictures(BudgetDocument document) {
    for (PathBudget path : document.paths()) {
      PictureBudget.of(document.chain(), path, document.rule())
          .ifPresent(picture -> picture.tell(sheet));
    }
  }

  private void limits(List<PathBudget> paths) {
    Map<Listener, ListenerLimits> limits = new EnumMap<>(Listener.class);
    paths.forEach(path -> limits.put(path.listener(), path.limits()));
    limits.forEach((listener, limit) -> sheet.row(listener.label(), limit(limit)));
  }

  private static String limit(ListenerLimits limits) {
    List<String> parts = new ArrayList<>();
    limits.cautionMs().ifPresent(ms -> parts.add("caution above " + Numbers.brief(ms, 2) + " ms"));
    limits.limitMs().ifPresent(ms -> parts.add("limit " + Numbers.brief(ms, 2) + " ms"));
    parts.add(limits.rule());
    return String.join("; ", parts);
  }

  private static String samples(Latency delay) {
    return Numbers.plain(delay.samples(), 1);
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
