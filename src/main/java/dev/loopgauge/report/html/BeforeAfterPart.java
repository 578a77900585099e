package dev.loopgauge.report.html;

import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.p;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import j2html.tags.DomContent;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

/** A path before the show beside the same path after it, with all that may tell why. */
final class BeforeAfterPart {
  private static final int SHORT_DIGEST = 8;

  private BeforeAfterPart() {}

  /** The verdict and the table. */
  static DomContent of(BeforeAndAfter shift) {
    Map<String, String> before = facts(shift.before());
    Map<String, String> after = facts(shift.after());
    Grid grid = new Grid("Before and after, side by side", "What", "Before", "After").words(3);
    grid.row(
        "delay, samples",
        delay(shift.before(), ShownDelay::inSamples),
        delay(shift.after(), ShownDelay::inSamples));
    grid.row(
        "delay, ms",
        delay(shift.before(), ShownDelay::inMs),
        delay(shift.after(), ShownDelay::inMs));
    Set<String> names = new TreeSet<>(before.keySet());
    names.addAll(after.keySet());
    for (String name : names) {
      String first = before.getOrDefault(name, "-");
      String second = after.getOrDefault(name, "-");
      grid.row(first.equals(second) ? name : name + ", differs", first, second);
    }
    return div(
        p(sentence(shift)),
        each(shift.inWords(), words -> p(Escaping.isolated(words))),
        grid.html());
  }

  private static String sentence(BeforeAndAfter shift) {
    Optional<String> by =
        shift.inSamples().flatMap(n -> shift.inMs().map(ms -> n + " samples (" + ms + " ms)"));
    if (by.isEmpty()) {
      return "There is no trustworthy delay after.";
    }
    boolean moved = shift.pair().standing() == PathPair.Standing.CHANGED;
    return moved
        ? "Changed by " + by.get() + ", more than the uncertainty of both."
        : (shift.changed() ? "The delay is the same" : "The same")
            + " within the uncertainty of both: "
            + by.get()
            + ".";
  }

  private static String delay(ReadDocument reading, Function<ShownDelay, String> told) {
    return reading.delay().map(told).orElse("-");
  }

  private static Map<String, String> facts(ReadDocument reading) {
    Map<String, String> facts = new TreeMap<>();
    reading
        .measured()
        .flatMap(MeasurementDocument::measurement)
        .ifPresent(measured -> put(facts, measured));
    reading.entry().ifPresent(entry -> put(facts, entry));
    return facts;
  }

  private static void put(Map<String, String> facts, MeasurementRecord measured) {
    measured.levelDb().ifPresent(db -> facts.put("level, dB", Numbers.plain(db.doubleValue(), 1)));
    measured.polarity().ifPresent(polarity -> facts.put("polarity", polarity));
    facts.put("arrivals", Integer.toString(measured.arrivals().size()));
  }

  private static void put(Map<String, String> facts, Entry entry) {
    entry.setup().forEach((key, value) -> facts.put("set: " + key, value));
    entry
        .chain()
        .ifPresent(chain -> facts.put("chain file", chain.digest().substring(0, SHORT_DIGEST)));
    entry
        .card()
        .ifPresent(
            card -> facts.put("card", "%s, block %d".formatted(card.backend(), card.blockSize())));
  }
}
