package dev.loopgauge.report.html;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.Numbers;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** When and where a report was measured, by whom and with which rig, as far as that is known. */
final class Occasion {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** Keys of {@code --set} that are told here. */
  private static final String PLACE = "place";

  private static final String BY = "by";

  private Occasion() {}

  /** What is known, a few words each. */
  static List<String> told(List<ReadDocument> readings, PageLayout layout, Budgets budgets) {
    List<Entry> entries = readings.stream().flatMap(reading -> reading.entry().stream()).toList();
    List<String> told = new ArrayList<>();
    date(entries).ifPresent(told::add);
    set(entries, PLACE).ifPresent(told::add);
    layout.by().or(() -> set(entries, BY)).ifPresent(who -> told.add("measured by " + who));
    budgets.rig().ifPresent(told::add);
    entries.stream()
        .flatMap(entry -> entry.card().stream())
        .findFirst()
        .map(Occasion::card)
        .ifPresent(told::add);
    return told;
  }

  private static Optional<String> date(List<Entry> entries) {
    List<ZonedDateTime> moments =
        entries.stream().map(entry -> entry.heading().at()).sorted().toList();
    return moments.isEmpty()
        ? Optional.empty()
        : Optional.of(span(moments.get(0), moments.get(moments.size() - 1)));
  }

  private static String span(ZonedDateTime first, ZonedDateTime last) {
    String from = DAY.format(first) + ", " + TIME.format(first);
    if (TIME.format(first).equals(TIME.format(last))
        && DAY.format(first).equals(DAY.format(last))) {
      return from;
    }
    return from
        + (DAY.format(first).equals(DAY.format(last)) ? " to " : " to " + DAY.format(last) + ", ")
        + TIME.format(last);
  }

  /** What was set in the entries, each value once. */
  private static Optional<String> set(List<Entry> entries, String key) {
    List<String> values =
        entries.stream()
            .map(entry -> entry.setup().getOrDefault(key, ""))
            .filter(value -> !value.isBlank())
            .distinct()
            .toList();
    return values.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", values));
  }

  private static String card(SoundCard card) {
    return "%s kHz, %s".formatted(Numbers.brief(card.rate().hertz() / 1000.0, 3), card.backend());
  }
}
