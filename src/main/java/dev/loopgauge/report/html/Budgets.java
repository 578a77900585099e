package dev.loopgauge.report.html;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.journal.ChainText;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Fields;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The budgets of paths: from budget documents, or from the chain files of the journal's entries.
 */
final class Budgets {
  private final Map<String, Fields> byPath = new LinkedHashMap<>();

  /** Of all readings; a later one replaces an earlier. */
  Budgets(List<Reading> readings) {
    readings.stream()
        .flatMap(reading -> reading.entry().stream())
        .flatMap(entry -> entry.chain().stream())
        .distinct()
        .forEach(this::addChain);
    readings.stream()
        .map(Reading::fields)
        .filter(fields -> fields.text("command").equals(Optional.of("budget")))
        .forEach(this::addAll);
  }

  private void addChain(ChainText text) {
    try {
      Chain chain = ChainParser.parse(text.text(), text.name());
      BudgetDocument document =
          new BudgetDocument(
              chain,
              chain.paths().values().stream().map(path -> ChainBudget.of(chain, path)).toList(),
              true,
              PictureRule.EBU_R37);
      addAll(new Fields(document.json()));
    } catch (ChainFormatException unreadable) {
      // The measurement stands without it, and its text is in the report as it was.
    }
  }

  private void addAll(Fields document) {
    document
        .parts("paths")
        .forEach(path -> path.text("name").ifPresent(name -> byPath.put(name, path)));
  }

  /** The budget of a path. */
  Optional<Fields> path(String name) {
    return Optional.ofNullable(byPath.get(name));
  }

  /** All of them, in their order. */
  List<Fields> all() {
    return List.copyOf(byPath.values());
  }
}
