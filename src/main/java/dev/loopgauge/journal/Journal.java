package dev.loopgauge.journal;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * Where entries are kept. They are added whole or not at all, and never changed. Entries come back
 * in the order in which they were kept, and those that were first kept in another journal where
 * their time puts them. An entry that is not as it was stored is left out and told of by {@link
 * #damaged}.
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
   * Adds entries that another journal kept first, with their places there, all of them or none, as
   * {@link #append} does.
   *
   * @return how many were new
   * @throws JournalException as for {@link #append}
   */
  int take(List<KeptEntry> entries) throws JournalException;

  /** The entries asked for since it was opened that are not as they were stored. */
  List<DamagedEntry> damaged();

  /**
   * How many entries there are, damaged ones included.
   *
   * @throws JournalException when the store can't be read
   */
  long size() throws JournalException;

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
  void each(Selection selection, Consumer<KeptEntry> reader) throws JournalException;

  /**
   * One whole entry; empty where there is none, and where it is damaged.
   *
   * @throws JournalException when the store can't be read
   */
  Optional<Entry> entry(UUID id) throws JournalException;

  /**
   * Which entries no longer stand, and what stands in their places.
   *
   * @throws JournalException when the store can't be read
   */
  Corrections corrections() throws JournalException;

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
