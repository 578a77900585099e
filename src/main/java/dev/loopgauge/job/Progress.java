package dev.loopgauge.job;

/** Where a long job says how much of it is done. */
public interface Progress {
  /** For jobs that nobody watches. */
  Progress UNSEEN = share -> {};

  /**
   * How much is done; may be called from any thread.
   *
   * @param share 0 to 1
   */
  void show(double share);

  /** There is nothing more to show. */
  default void done() {}
}
