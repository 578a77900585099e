package dev.loopgauge.report.html;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.journal.ChainText;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.plot.Lanes.Part;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The budgets of paths: from budget documents, or from the chain files of the journal's entries.
 */
final class Budgets {
  private final Map<String, PathRecord> byPath = new LinkedHashMap<>();
  private final Map<String, Map<String, Part>> kinds = new HashMap<>();
  private Optional<String> rig = Optional.empty();

  /** Of all readings; a later one replaces an earlier. */
  Budgets(List<ReadDocument> readings) {
    readings.stream()
        .flatMap(reading -> reading.entry().stream())
        .flatMap(entry -> entry.chain().stream())
        .distinct()
        .forEach(this::addChain);
    readings.stream()
        .flatMap(reading -> reading.as(BudgetDocument.class).stream())
        .forEach(this::addAll);
  }

  private void addChain(ChainText text) {
    try {
      Chain chain = ChainParser.parse(text.text(), text.name());
      addAll(
          BudgetDocument.of(
              chain,
              chain.paths().values().stream().map(path -> ChainBudget.of(chain, path)).toList(),
              PictureRule.EBU_R37));
      rig = Optional.of(chain.name());
      Map<String, Part> stages = new HashMap<>();
      chain.stages().forEach((name, stage) -> stages.put(name, StageKinds.of(stage)));
      chain.paths().keySet().forEach(path -> kinds.put(path, stages));
    } catch (ChainFormatException unreadable) {
      // The measurement stands without it, and its text is in the report as it was.
    }
  }

  private void addAll(BudgetDocument document) {
    document.paths().forEach(path -> byPath.put(path.name(), path));
  }

  /** The budget of a path. */
  Optional<PathRecord> path(String name) {
    return Optional.ofNullable(byPath.get(name));
  }

  /** What the last chain file calls its rig. */
  Optional<String> rig() {
    return rig;
  }

  /** What kind of thing a stage of a path is. */
  Part kind(String path, String stage) {
    return Optional.ofNullable(kinds.get(path))
        .flatMap(stages -> Optional.ofNullable(stages.get(stage)))
        .orElseGet(() -> StageKinds.named(stage));
  }

  /** All of them, in their order. */
  List<PathRecord> all() {
    return List.copyOf(byPath.values());
  }
}
