package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The budget as text: how the listeners stand, a table of paths or of their stages, the rest. */
final class BudgetText {
  private final BudgetDocument document;
  private final Excerpt excerpt;
  private final Sheet sheet = new Sheet();

  private BudgetText(BudgetDocument document, Excerpt excerpt) {
    this.document = document;
    this.excerpt = excerpt;
  }

  /** Path by path; of long lists what matters. */
  static String brief(BudgetDocument document) {
    return new BudgetText(document, Excerpt.of(false)).byPath();
  }

  /** Path by path, all of it. */
  static String full(BudgetDocument document) {
    return new BudgetText(document, Excerpt.of(true)).byPath();
  }

  /** Stage by stage. */
  static String inStages(BudgetDocument document) {
    return new BudgetText(document, Excerpt.of(true)).byStage();
  }

  private String byPath() {
    start();
    PathTable.tell(document.paths(), excerpt, sheet);
    rest();
    sheet
        .gap()
        .line("Metres, feet: the delay as extra distance.")
        .line("Stage by stage: --path NAME.");
    if (excerpt.isShortened()) {
      sheet.line("Rows that say the same share one; --full lists all of them.");
    }
    return sheet.toString();
  }

  private String byStage() {
    start();
    for (PathRecord path : document.paths()) {
      StageTable.tell(path, sheet);
    }
    rest();
    return sheet.toString();
  }

  private void start() {
    if (!document.changes().isEmpty()) {
      document.changes().forEach(change -> sheet.line("What if " + change + "?"));
      sheet.gap();
      WhatIfTable.tell(document.before(), document.paths(), excerpt, sheet);
    }
    BudgetVerdict.tell(document.paths(), document.mixes(), excerpt, sheet);
    sheet.line(title()).gap();
  }

  private String title() {
    List<String> parts = new ArrayList<>();
    if (document.chain().isPresent()) {
      parts.add(document.chain().get());
    }
    if (document.sampleRateHz().isPresent()) {
      parts.add(Numbers.brief(document.sampleRateHz().get() / 1000.0, 4) + " kHz");
    }
    if (document.blockSize().isPresent()) {
      parts.add("block " + document.blockSize().get());
    }
    if (document.airTemperature().isPresent()) {
      parts.add(Numbers.brief(document.airTemperature().get().doubleValue(), 1) + " °C");
    }
    return String.join(" · ", parts);
  }

  private void rest() {
    for (String note : document.notes()) {
      sheet.row("note", note);
    }
    PathNotes.tell(document.paths(), excerpt, sheet);
    sheet.gap();
    Inputs.tell(document.inputs(), document.paths(), excerpt, sheet);
    for (MixRecord mix : document.mixes()) {
      Mixes.tell(mix, document.paths(), excerpt, sheet);
    }
    limits();
  }

  private void limits() {
    Map<Listener, PathRecord> limits = new EnumMap<>(Listener.class);
    for (PathRecord path : document.paths()) {
      if (path.listener().isPresent()) {
        limits.put(path.listener().get(), path);
      }
    }
    for (Map.Entry<Listener, PathRecord> limit : limits.entrySet()) {
      sheet.row(limit.getKey().label(), limit(limit.getValue()));
    }
  }

  private static String limit(PathRecord path) {
    List<String> parts = new ArrayList<>();
    if (path.cautionMs().isPresent()) {
      parts.add("caution above " + brief(path.cautionMs().get()) + " ms");
    }
    if (path.limitMs().isPresent()) {
      parts.add("limit " + brief(path.limitMs().get()) + " ms");
    }
    if (path.limitSource().isPresent()) {
      parts.add(path.limitSource().get());
    }
    return String.join("; ", parts);
  }

  private static String brief(BigDecimal ms) {
    return Numbers.brief(ms.doubleValue(), 2);
  }
}
