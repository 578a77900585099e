package dev.loopgauge.journal;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** What the journal itself has as different between two entries. */
final class RecordedChanges {
  /** The kinds that a chain can tell the delay of. */
  static final String BLOCK_SIZE = "block-size";

  static final String SAMPLE_RATE = "sample-rate";
  static final String CHAIN_FILE = "chain-file";

  private static final String NOT_STATED = "not stated";

  /**
   * Something that is not as it was.
   *
   * @param kind its name in documents
   * @param text what it was and what it is
   */
  record Change(String kind, String text) {}

  private final Entry first;
  private final Entry second;
  private final List<Change> changes = new ArrayList<>();

  private RecordedChanges(Entry first, Entry second) {
    this.first = first;
    this.second = second;
  }

  /** The changes from one entry to another, those that move delays most often first. */
  static List<Change> between(Entry first, Entry second) {
    RecordedChanges found = new RecordedChanges(first, second);
    found.card(BLOCK_SIZE, "block size", card -> card.blockSize() + " samples");
    found.card(SAMPLE_RATE, "sample rate", card -> card.rate().hertz() + " Hz");
    found.chain();
    found.setup();
    found.card("back-end", "back end", SoundCard::backend);
    found.card("output", "output", SoundCard::output);
    found.card("input", "input", SoundCard::input);
    return List.copyOf(found.changes);
  }

  private void card(String kind, String name, Function<SoundCard, Object> value) {
    if (first.card().isPresent() && second.card().isPresent()) {
      add(kind, name, value.apply(first.card().get()), value.apply(second.card().get()));
    }
  }

  private void chain() {
    Optional<String> before = first.chain().map(ChainText::digest);
    Optional<String> after = second.chain().map(ChainText::digest);
    if (before.isPresent() && after.isPresent() && !before.equals(after)) {
      changes.add(new Change(CHAIN_FILE, "the chain file was edited"));
    }
  }

  private void setup() {
    Map<String, String> before = first.setup();
    Map<String, String> after = second.setup();
    Set<String> names = new LinkedHashSet<>(before.keySet());
    names.addAll(after.keySet());
    for (String name : names) {
      add(
          "setup",
          name,
          before.getOrDefault(name, NOT_STATED),
          after.getOrDefault(name, NOT_STATED));
    }
  }

  private void add(String kind, String name, Object before, Object after) {
    if (!Objects.equals(before, after)) {
      changes.add(new Change(kind, "%s was %s, is %s".formatted(name, before, after)));
    }
  }
}
