package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The budget as text: a table of paths, or of the stages of each. */
final class BudgetText {
  private final BudgetDocument document;
  private final Sheet sheet = new Sheet();

  private BudgetText(BudgetDocument document) {
    this.document = document;
  }

  /** The text; in stages or path by path. */
  static String of(BudgetDocument document, boolean inStages) {
    BudgetText text = new BudgetText(document);
    if (!document.changes().isEmpty()) {
      text.changes();
    }
    BudgetVerdict.tell(document.paths(), document.mixes(), text.sheet);
    text.sheet.line(text.title()).gap();
    if (inStages) {
      document.paths().forEach(text::stages);
    } else {
      text.paths();
    }
    text.rest();
    if (!inStages) {
      text.sheet
          .gap()
          .line("Metres, feet: as if the wedge, loudspeaker or source stood so much further away.")
          .line("Stage by stage: --path NAME.");
    }
    return text.sheet.toString();
  }

  private void rest() {
    document.notes().forEach(note -> sheet.row("note", note));
    document.paths().stream()
        .filter(PathRecord::standsOtherwiseByItsDelay)
        .forEach(
            path ->
                path.judged()
                    .ifPresent(judged -> sheet.row("judged", path.name() + ": " + judged.told())));
    document.paths().forEach(this::notes);
    document.paths().forEach(this::picture);
    sheet.gap();
    document.inputs().forEach(input -> input.tell(sheet, delayOf(input.fastest())));
    document.mixes().forEach(mix -> Mixes.tell(mix, document.paths(), sheet));
    limits();
  }

  private Optional<BigDecimal> delayOf(String path) {
    return document.paths().stream()
        .filter(one -> one.name().equals(path))
        .findFirst()
        .map(PathRecord::delayMs);
  }

  /** One path, before and after. */
  private record Change(PathRecord before, PathRecord after) {
    String later() {
      return Numbers.signed(after.delayMs().subtract(before.delayMs()).doubleValue(), 3);
    }
  }

  private void changes() {
    document.changes().forEach(change -> sheet.line("What if " + change + "?"));
    sheet.gap();
    List<Change> changes = new ArrayList<>();
    int both = Math.min(document.before().size(), document.paths().size());
    for (int i = 0; i < both; i++) {
      changes.add(new Change(document.before().get(i), document.paths().get(i)));
    }
    new Table<Change>()
        .words("path", change -> change.after().name())
        .figures("ms now", change -> ms(change.before().delayMs()))
        .figures("then", change -> ms(change.after().delayMs()))
        .figures("later", Change::later)
        .words("standing now", change -> standing(change.before()))
        .words("then", change -> standing(change.after()))
        .lines(changes)
        .forEach(sheet::asIs);
    sheet.gap();
  }

  private static String standing(PathRecord path) {
    return path.heard().map(standing -> standing.label()).orElse("?");
  }

  private String title() {
    List<String> parts = new ArrayList<>();
    document.chain().ifPresent(parts::add);
    document
        .sampleRateHz()
        .ifPresent(hertz -> parts.add(Numbers.brief(hertz / 1000.0, 4) + " kHz"));
    document.blockSize().ifPresent(size -> parts.add("block " + size));
    document.airTemperature().ifPresent(t -> parts.add(Numbers.brief(t.doubleValue(), 1) + " °C"));
    return String.join(" · ", parts);
  }

  private void paths() {
    new Table<PathRecord>()
        .words("path", PathRecord::name)
        .words("listener", BudgetText::listener)
        .figures("ms", path -> ms(path.delayMs()))
        .figures("samples", path -> plain(path.delaySamples(), 1))
        .figures("±", path -> brief(path.toleranceSamples()))
        .figures("metres", path -> plain(path.equivalentMetres(), 2))
        .figures("feet", path -> plain(path.equivalentFeet(), 1))
        .words("standing", PathRecord::inWords)
        .lines(document.paths())
        .forEach(sheet::asIs);
    sheet.gap();
  }

  private static String listener(PathRecord path) {
    return path.listener().map(Listener::label).orElse("?");
  }

  private void stages(PathRecord path) {
    sheet.line(path.name() + ", " + listener(path) + ": " + path.inWords());
    List<StageRecord> rows = new ArrayList<>(path.stages());
    rows.add(
        new StageRecord(
            "(whole path)",
            path.delaySamples(),
            Optional.of(path.delayMs()),
            path.toleranceSamples()));
    rows.add(
        new StageRecord(
            "(loop by cable)", path.loopSamples(), path.loopMs(), path.loopToleranceSamples()));
    new Table<StageRecord>()
        .words("stage", StageRecord::name)
        .figures("ms", row -> plain(row.delayMs(), 3))
        .figures("samples", row -> plain(row.delaySamples(), 1))
        .figures("±", row -> brief(row.toleranceSamples()))
        .lines(rows)
        .forEach(sheet::asIs);
    sheet.line("As if " + speaker(path) + " stood " + distance(path) + " further away.");
    sheet.gap();
  }

  private static String speaker(PathRecord path) {
    return switch (path.listener().orElse(Listener.STREAM)) {
      case WEDGE -> "the wedge";
      case HOUSE -> "the loudspeakers";
      case IN_EAR, STREAM -> "the source";
    };
  }

  private static String distance(PathRecord path) {
    return "%s m (%s ft)"
        .formatted(plain(path.equivalentMetres(), 2), plain(path.equivalentFeet(), 1));
  }

  private void notes(PathRecord path) {
    List<String> notes = new ArrayList<>();
    path.earlierFeed()
        .map(feed -> feed.told(path.delayMs(), path.inWords(feed.standing(), feed.delayMs())))
        .ifPresent(notes::add);
    path.returnsToTalker().ifPresent(talker -> notes.add(talker.told()));
    path.guidance().ifPresent(row -> notes.add(row.told(path.delayMs())));
    path.ownVoice()
        .filter(comb -> comb.firstNullHz().isPresent())
        .ifPresent(comb -> notes.add(throughBone(path, comb)));
    path.directSound().ifPresent(sound -> notes.add(sound.told(path.listener())));
    notes.forEach(note -> sheet.line(path.name() + ": " + note));
  }

  /** Where the instrument is known, so is what its players found. */
  private static String throughBone(PathRecord path, NullsRecord comb) {
    return (path.guidance().isPresent() ? "the own" : "a singer's own")
        + (" voice is heard by bone, then in the ears: " + comb.told() + ".");
  }

  private void picture(PathRecord path) {
    path.picture()
        .ifPresent(
            picture -> {
              String name = picture.name().map(n -> ", picture " + n).orElse("");
              sheet.line(path.name() + name + ": " + picture.told());
              sheet.line("  " + picture.advice());
              picture.closest().ifPresent(block -> sheet.line("  " + block));
            });
  }

  private void limits() {
    Map<Listener, PathRecord> limits = new EnumMap<>(Listener.class);
    document
        .paths()
        .forEach(path -> path.listener().ifPresent(listener -> limits.put(listener, path)));
    limits.forEach((listener, path) -> sheet.row(listener.label(), limit(path)));
  }

  private static String limit(PathRecord path) {
    List<String> parts = new ArrayList<>();
    path.cautionMs().ifPresent(ms -> parts.add("caution above " + brief(Optional.of(ms)) + " ms"));
    path.limitMs().ifPresent(ms -> parts.add("limit " + brief(Optional.of(ms)) + " ms"));
    path.limitSource().ifPresent(parts::add);
    return String.join("; ", parts);
  }

  private static String ms(BigDecimal ms) {
    return Numbers.plain(ms.doubleValue(), 3);
  }

  private static String plain(Optional<BigDecimal> number, int decimals) {
    return number.map(known -> Numbers.plain(known.doubleValue(), decimals)).orElse("-");
  }

  private static String brief(Optional<BigDecimal> number) {
    return number.map(known -> Numbers.brief(known.doubleValue(), 2)).orElse("-");
  }
}
