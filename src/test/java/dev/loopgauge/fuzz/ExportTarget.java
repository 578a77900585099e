package dev.loopgauge.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.report.exchange.ExchangeException;
import dev.loopgauge.report.exchange.ExportReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** Exports: refused with the line, or with the very entries that were written. */
final class ExportTarget implements Target {
  private final String format;
  private final KeptEntries kept;

  ExportTarget(String format, Path folder) throws Exception {
    this.format = format;
    this.kept = KeptEntries.in(folder);
  }

  @Override
  public List<byte[]> seeds() throws Exception {
    return List.of(kept.export(format));
  }

  @Override
  public void check(byte[] input) {
    try {
      List<Entry> read =
          ExportReader.read(new String(input, StandardCharsets.UTF_8), "f").entries().stream()
              .map(KeptEntry::entry)
              .toList();
      assertTrue(kept.entries().containsAll(read), () -> "other entries: " + read);
      assertEquals(read.stream().distinct().count(), read.size(), "an entry twice");
    } catch (ExchangeException e) {
      assertTrue(e.getMessage().matches("(?s)f:[0-9]+: expected .*"), e.getMessage());
    }
  }
}
