package dev.loopgauge.journal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * One measurement in the journal, with all that is needed to repeat it.
 *
 * @param heading what it is listed and compared by
 * @param note what the user had to say about it
 * @param setup what else moves delays between shows, as the user named it, in the order given
 * @param document the JSON document that the command printed: measurement, findings, comparison
 * @param chain the chain file as it was, where one was used
 * @param card what was measured with; empty for an analysis of recordings
 * @param capture the recording, where it was kept
 * @param toolVersion the version of this program
 */
public record Entry(
    Heading heading,
    Optional<String> note,
    Map<String, String> setup,
    String document,
    Optional<ChainText> chain,
    Optional<SoundCard> card,
    Optional<KeptCapture> capture,
    String toolVersion) {
  /** The same without the folders that versions before kept: names alone go out. */
  public Entry withoutFolders() {
    return new Entry(
        heading,
        note,
        setup,
        document,
        chain.map(ChainText::withoutFolder),
        card,
        capture,
        toolVersion);
  }

  /** Copies the set-up, keeping its order. */
  public Entry {
    setup = Collections.unmodifiableMap(new LinkedHashMap<>(setup));
  }
}
