package dev.loopgauge.job;

/** Where a long job says how much of it is done. */
public interface Progress {
  /** For jobs that nobody watches. */
  Progress UNSEEN = new Unseen();

  /** A class of its own, since a lambda's would be made anew at each start. */
  final class Unseen implements Progress {
    private Unseen() {}

    @Override
    public void show(double share) {
      // Nobody watches.
    }
  }

  /**
   * How much is done; may be called from any thread.
   *
   * @param share 0 to 1
   */
  void show(double share);

  /** There is nothing more to show. */
  default void done() {}
}
