package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.KeptEntry;
import java.util.List;

/**
 * What {@link EntryWriter} wrote, read again.
 *
 * @param entries the entries
 * @param leftOut how many more the journal had, which could not be written
 * @param saysItsEnd whether it has the last line that says how many entries there are; exports of
 *     older versions have none, so entries at their end may be missing
 */
public record EntryFile(List<KeptEntry> entries, int leftOut, boolean saysItsEnd) {
  /** Copies the list. */
  public EntryFile {
    entries = List.copyOf(entries);
  }
}
