package dev.loopgauge.report.exchange;

import dev.loopgauge.chain.Nearest;
import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.EntryDigest;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Keeping;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.Zones;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.verdict.Judgement;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.UUID;

/** Makes an entry of what stands under its keys. */
final class ExportedEntryReader {
  private static final String FOREIGN = "is it what `loopgauge journal export` wrote?";

  private final String file;
  private final long line;
  private final Map<String, Object> keys;

  /** What stands in a line of a file. */
  ExportedEntryReader(String file, long line, Map<String, Object> keys) {
    this.file = file;
    this.line = line;
    this.keys = keys;
  }

  /** What was set up, as {@link EntryKeys} writes it. */
  private record Named(String name, String value) {}

  /** A way from what stands there to what it means; what can't be throws. */
  private interface Meaning<T> {
    T of(Object value);
  }

  /** The entry. */
  KeptEntry entry() throws ExchangeException {
    for (String key : keys.keySet()) {
      if (!EntryKeys.ALL.contains(key)) {
        String hint = Nearest.hint(key, EntryKeys.ALL);
        throw refused("a known key", ExchangeException.shown(key), hint);
      }
    }
    Entry entry =
        new Entry(
            heading(),
            optional("note", "a text", String.class::cast),
            setup(),
            required("document", "a text", String.class::cast),
            chain(),
            card(),
            capture(),
            required("toolVersion", "a text", String.class::cast));
    check(entry);
    return new KeptEntry(entry, keeping());
  }

  private Optional<Keeping> keeping() throws ExchangeException {
    if (!together(EntryKeys.ORIGIN, EntryKeys.NUMBER, EntryKeys.LINK, EntryKeys.ORDER_AT)) {
      return Optional.empty();
    }
    String origin = required(EntryKeys.ORIGIN, "a text", String.class::cast);
    String link = required(EntryKeys.LINK, "a digest", ExportedEntryReader::digest);
    Instant order = required(EntryKeys.ORDER_AT, "a time", ExportedEntryReader::instant);
    return Optional.of(
        required(
            EntryKeys.NUMBER,
            "a number, 1 or more",
            value -> new Keeping(origin, whole(value), link, order.toEpochMilli())));
  }

  private static String digest(Object value) {
    String digest = (String) value;
    if (!digest.matches("[0-9a-f]{64}")) {
      throw new IllegalArgumentException("no digest");
    }
    return digest;
  }

  /** A character that was replaced stands only where the digest says that it was kept so. */
  private void check(Entry entry) throws ExchangeException {
    Optional<String> digest = optional(EntryKeys.DIGEST, "a digest", String.class::cast);
    boolean asExported = digest.map(EntryDigest.of(entry)::equals).orElse(false);
    if (!asExported && keys.values().stream().anyMatch(ExportedEntryReader::holdsReplaced)) {
      throw refused(
          "text as it was typed",
          "U+FFFD, which stands for a letter that was lost",
          "was the file saved in other letters than UTF-8? Export it again");
    }
    if (!asExported && digest.isPresent()) {
      throw refused(
          "the entry that was exported",
          "another: its digest doesn't match",
          "was the file edited, or saved by a spreadsheet? Export it again");
    }
    Optional<String> wrong = EntryCheck.wrong(entry);
    if (wrong.isPresent()) {
      throw refused("an entry that can be", wrong.get(), FOREIGN);
    }
  }

  private static boolean holdsReplaced(Object value) {
    return String.valueOf(value).indexOf('\uFFFD') >= 0;
  }

  private Heading heading() throws ExchangeException {
    UUID id = required("id", "an id", ExportedEntryReader::uuid);
    Instant at =
        required("at", "a time such as 2026-05-01T18:00:00Z", ExportedEntryReader::instant);
    String zone = required("zone", "a time zone", String.class::cast);
    Optional<ZoneOffset> offset =
        optional(EntryKeys.OFFSET, "an offset such as +01:00", ExportedEntryReader::offset);
    ZoneId there =
        Zones.known(zone)
            .or(() -> offset)
            .orElseThrow(() -> refused("a time zone", ExchangeException.shown(zone), FOREIGN));
    String show = required("show", "the name of a show", String.class::cast);
    When when = required("when", "before, during or after", ExportedEntryReader::when);
    Optional<String> path = optional("path", "a text", String.class::cast);
    String outcome = required("outcome", "a text", String.class::cast);
    Optional<Judgement> standing =
        optional(
            EntryKeys.STANDING,
            "good, bad, undecided or not-judged",
            ExportedEntryReader::standing);
    Optional<LoggedDelay> delay = delay();
    Optional<UUID> corrects = optional("corrects", "an id", ExportedEntryReader::uuid);
    try {
      ZonedDateTime local = ZonedDateTime.ofInstant(at, there);
      Optional<String> foreign =
          Zones.known(zone).isPresent() ? Optional.empty() : Optional.of(zone);
      return new Heading(id, local, show, when, path, outcome, standing, delay, corrects, foreign);
    } catch (IllegalArgumentException e) {
      throw refused("an entry that can be", e.getMessage(), FOREIGN);
    }
  }

  private static UUID uuid(Object value) {
    UUID id = UUID.fromString((String) value);
    if (!id.toString().equals(value)) {
      throw new IllegalArgumentException("not written as ids are");
    }
    return id;
  }

  private static ZoneOffset offset(Object value) {
    return ZoneOffset.of((String) value);
  }

  private static Instant instant(Object value) {
    return Instant.parse((String) value);
  }

  private static When when(Object value) {
    return When.labelled((String) value).orElseThrow();
  }

  private static Judgement standing(Object value) {
    return Judgement.labelled((String) value).orElseThrow();
  }

  private static double number(Object value) {
    return value instanceof Number number
        ? number.doubleValue()
        : Double.parseDouble((String) value);
  }

  private static int whole(Object value) {
    return value instanceof Integer whole ? whole : Integer.parseInt((String) value);
  }

  private static SampleRate rate(Object value) {
    return new SampleRate(whole(value));
  }

  private Optional<LoggedDelay> delay() throws ExchangeException {
    if (!together("delaySamples", "sampleRateHz", "uncertaintySamples")) {
      return Optional.empty();
    }
    SampleRate rate = required("sampleRateHz", "a sample rate", ExportedEntryReader::rate);
    Latency delay =
        required("delaySamples", "a finite number", value -> new Latency(number(value), rate));
    return Optional.of(
        required(
            "uncertaintySamples",
            "a number of samples, 0 or more",
            value -> new LoggedDelay(delay, number(value))));
  }

  private Optional<ChainText> chain() throws ExchangeException {
    return together("chainName", "chain")
        ? Optional.of(
            new ChainText(
                required("chainName", "a text", String.class::cast),
                required("chain", "a text", String.class::cast)))
        : Optional.empty();
  }

  private Optional<SoundCard> card() throws ExchangeException {
    if (!together("backend", "output", "input", "cardRateHz", "blockSize")) {
      return Optional.empty();
    }
    String backend = required("backend", "a text", String.class::cast);
    String output = required("output", "a text", String.class::cast);
    String input = required("input", "a text", String.class::cast);
    SampleRate rate = required("cardRateHz", "a sample rate", ExportedEntryReader::rate);
    return Optional.of(
        required(
            "blockSize",
            "a number of samples, 1 or more",
            value -> new SoundCard(backend, output, input, rate, whole(value))));
  }

  private Optional<KeptCapture> capture() throws ExchangeException {
    return together("captureFile", "captureDigest")
        ? Optional.of(
            new KeptCapture(
                required("captureFile", "a text", String.class::cast),
                required("captureDigest", "a text", String.class::cast)))
        : Optional.empty();
  }

  private Map<String, String> setup() throws ExchangeException {
    return required(
        EntryKeys.SETUP,
        "a list of names and values",
        value -> {
          Map<String, String> setup = new LinkedHashMap<>();
          for (Object pair : (List<?>) value) {
            Named set = Unbinder.read(Named.class, (Map<?, ?>) pair).orElseThrow();
            setup.put(set.name(), set.value());
          }
          return setup;
        });
  }

  /** Whether these keys hold something, which they must all or none. */
  private boolean together(String first, String... others) throws ExchangeException {
    boolean there = keys.get(first) != null;
    for (String other : others) {
      if ((keys.get(other) != null) != there) {
        String expected = "'%s' and '%s' together".formatted(first, other);
        throw refused(expected, "one of them alone", FOREIGN);
      }
    }
    return there;
  }

  private <T> T required(String key, String expected, Meaning<T> meaning) throws ExchangeException {
    return optional(key, expected, meaning)
        .orElseThrow(() -> refused(expected + " under '" + key + "'", "nothing", FOREIGN));
  }

  private <T> Optional<T> optional(String key, String expected, Meaning<T> meaning)
      throws ExchangeException {
    Object value = keys.get(key);
    try {
      return Optional.ofNullable(value).map(meaning::of);
    } catch (ClassCastException
        | IllegalArgumentException
        | NoSuchElementException
        | DateTimeException e) {
      String wanted = expected + " under '" + key + "'";
      throw refused(wanted, ExchangeException.shown(value), FOREIGN);
    }
  }

  private ExchangeException refused(String expected, String found, String hint) {
    return new ExchangeException(file, line, expected, found, hint);
  }
}
