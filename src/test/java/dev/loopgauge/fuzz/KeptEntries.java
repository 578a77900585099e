package dev.loopgauge.fuzz;

import dev.loopgauge.cli.Run;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.store.Journals;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Eleven entries, most of them nasty, and a journal that holds them. */
record KeptEntries(Path journal, List<Entry> entries) {
  private static final long SEED = 20_261_129;

  static KeptEntries in(Path folder) throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Entry> entries = new ArrayList<>(List.of(Entries.entry(1), Entries.entry(2)));
    for (int n = 3; n < 12; n++) {
      entries.add(Entries.nasty(n, random));
    }
    Path file = folder.resolve("journal.db");
    Files.deleteIfExists(file);
    try (Journal journal = Journals.open(file.toString(), Map.of())) {
      journal.append(entries);
    }
    return new KeptEntries(file, List.copyOf(entries));
  }

  Map<String, String> environment() {
    return Map.of("LOOPGAUGE_JOURNAL", journal.toString());
  }

  byte[] export(String format) throws Exception {
    Path out = journal.resolveSibling("whole." + format);
    Run.on(false, "", environment(), "journal", "export", "--format", format, "-o", out.toString());
    return Files.readAllBytes(out);
  }
}
