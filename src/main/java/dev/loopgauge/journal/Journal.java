package dev.loopgauge.journal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * Where entries are kept. They are added whole or not at all, and never changed. Entries come back
 * in the order of their time, those of the same time in the order in which they were added.
 */
public interface Journal extends AutoCloseable {
  /**
   * Adds entries, all of them or none. When it returns they are on the disk. An entry that is there
   * already, the same in every part, is passed over, so that an import can be repeated.
   *
   * @return how many were new
   * @throws JournalException when they can't be stored, when an id is taken by an entry with other
   *     contents, or when one corrects an entry that is neither stored nor among them
   */
  int append(List<Entry> entries) throws JournalException;

  /**
   * The headings of entries, without their bulky parts.
   *
   * @throws JournalException when the store can't be read
   */
  List<Heading> headings(Selection selection) throws JournalException;

  /**
   * Hands out whole entries one after the other; no more than a few are held in memory.
   *
   * @throws JournalException when the store can't be read
   */
  void each(Selection selection, Consumer<Entry> reader) throws JournalException;

  /**
   * One whole entry.
   *
   * @throws JournalException when the store can't be read
   */
  Optional<Entry> entry(UUID id) throws JournalException;

  /**
   * Which entries no longer stand, each with the latest that corrects it.
   *
   * @throws JournalException when the store can't be read
   */
  Map<UUID, UUID> corrections() throws JournalException;

  /**
   * The headings of the entries whose ids begin so, in lower case.
   *
   * @throws JournalException when the store can't be read
   */
  List<Heading> beginning(String id) throws JournalException;

  /**
   * Reads all of the store and says what is wrong with it, one sentence each; empty when all is
   * well.
   *
   * @throws JournalException when the store can't be read at all
   */
  List<String> check() throws JournalException;

  @Override
  void close() throws JournalException;
}
