package dev.loopgauge.chain.file;

/**
 * Reads one named entry of a section of a chain file.
 *
 * @param <T> what it is read as
 */
interface EntryReader<T> {
  /** The entry of this name. */
  T read(String name, YamlValue value) throws ChainFormatException;
}
