package dev.loopgauge.journal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** A journal for tests that lasts as long as the object. */
public final class MemoryJournal implements Journal {
  private final Map<UUID, Entry> entries = new LinkedHashMap<>();

  @Override
  public int append(List<Entry> added) throws JournalException {
    Map<UUID, Entry> all = new LinkedHashMap<>(entries);
    for (Entry entry : added) {
      Entry old = all.putIfAbsent(entry.heading().id(), entry);
      if (old != null && !old.equals(entry)) {
        throw new JournalException("taken: " + entry.heading().id(), "use another");
      }
    }
    for (Entry entry : added) {
      if (!entry.heading().corrects().map(all::containsKey).orElse(true)) {
        throw new JournalException("corrects what is not there", "add that first");
      }
    }
    int fresh = all.size() - entries.size();
    entries.putAll(all);
    return fresh;
  }

  @Override
  public int take(List<KeptEntry> added) throws JournalException {
    return append(added.stream().map(KeptEntry::entry).toList());
  }

  @Override
  public List<DamagedEntry> damaged() {
    return List.of();
  }

  @Override
  public long size() {
    return entries.size();
  }

  @Override
  public List<Heading> headings(Selection selection) {
    return chosen(selection).stream().map(Entry::heading).toList();
  }

  @Override
  public void each(Selection selection, Consumer<KeptEntry> reader) {
    chosen(selection).forEach(entry -> reader.accept(new KeptEntry(entry, Optional.empty())));
  }

  @Override
  public Optional<Entry> entry(UUID id) {
    return Optional.ofNullable(entries.get(id));
  }

  @Override
  public Corrections corrections() {
    return Corrections.of(headings(Selection.ALL));
  }

  @Override
  public List<Heading> beginning(String id) {
    return headings(Selection.ALL).stream()
        .filter(heading -> heading.id().toString().startsWith(id))
        .toList();
  }

  @Override
  public List<String> check() {
    return List.of();
  }

  @Override
  public void close() {}

  private List<Entry> chosen(Selection selection) {
    Stream<Entry> matching =
        entries.values().stream()
            .filter(e -> selection.show().map(e.heading().show()::equals).orElse(true))
            .filter(e -> selection.when().map(e.heading().when()::equals).orElse(true))
            .filter(e -> selection.path().isEmpty() || selection.path().equals(e.heading().path()))
            .sorted(Comparator.comparing(e -> e.heading().at().toInstant()));
    List<Entry> found = new ArrayList<>(matching.toList());
    int skipped = Math.max(0, found.size() - selection.latest().orElse(found.size()));
    return found.subList(skipped, found.size());
  }
}
