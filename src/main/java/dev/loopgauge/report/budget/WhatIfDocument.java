package dev.loopgauge.report.budget;

import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * How late the paths of a chain would be if something were different.
 *
 * @param changes what would be different, in words
 * @param before the budgets as stated
 * @param after the budgets of the same paths with the changes
 */
public record WhatIfDocument(List<String> changes, BudgetDocument before, BudgetDocument after)
    implements Document {
  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException when the paths differ
   */
  public WhatIfDocument {
    changes = List.copyOf(changes);
    if (!names(before).equals(names(after))) {
      throw new IllegalArgumentException(
          "the same paths must stand before and after, not " + names(before) + names(after));
    }
  }

  private static List<String> names(BudgetDocument document) {
    return document.paths().stream().map(PathBudget::name).toList();
  }

  /** One path, before and after. */
  private record Pair(PathBudget before, PathBudget after) {
    double laterMs() {
      return after.delay().ms() - before.delay().ms();
    }
  }

  private List<Pair> pairs() {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < before.paths().size(); i++) {
      pairs.add(new Pair(before.paths().get(i), after.paths().get(i)));
    }
    return pairs;
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    changes.forEach(change -> sheet.line("What if " + change + "?"));
    sheet.gap();
    new Table<Pair>()
        .words("path", pair -> pair.before().name())
        .figures("ms now", pair -> Numbers.plain(pair.before().delay().ms(), 3))
        .figures("then", pair -> Numbers.plain(pair.after().delay().ms(), 3))
        .figures("later", pair -> Numbers.signed(pair.laterMs(), 3))
        .words("standing now", pair -> pair.before().standing().label())
        .words("then", pair -> pair.after().standing().label())
        .lines(pairs())
        .forEach(sheet::asIs);
    sheet.gap();
    return sheet.block(after.text()).toString();
  }

  /** The budget as changed, with the same keys as one that is not, and with what was changed. */
  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = after.json();
    json.put("changes", changes);
    json.put("before", before.json().get("paths"));
    return json;
  }
}
