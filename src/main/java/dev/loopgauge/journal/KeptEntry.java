package dev.loopgauge.journal;

import java.util.Optional;

/**
 * An entry with its place in the record.
 *
 * @param entry what was measured
 * @param keeping where it was kept first; empty for entries of versions that didn't keep that
 */
public record KeptEntry(Entry entry, Optional<Keeping> keeping) {}
