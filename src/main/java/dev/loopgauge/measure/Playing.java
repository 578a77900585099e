package dev.loopgauge.measure;

/**
 * How a measurement plays.
 *
 * @param spareTurns how many turns more may be played where sound was lost, 0 or more
 * @param listener told meanwhile
 */
public record Playing(int spareTurns, Listener listener) {
  /** How many turns whoever agreed to a measurement agreed to beyond its repeats. */
  public static final int MOST_SPARE = 2;

  /** Each turn once, nobody told. */
  public static final Playing ONCE =
      new Playing(
          0,
          new Listener() {
            @Override
            public void heard(int turn, int turns, double peakDbfs) {}

            @Override
            public void again(int turns, int lost) {}
          });

  /** Lost turns again, nobody told. */
  public static final Playing AGAIN = again(ONCE.listener());

  /** Lost turns again, as far as that was agreed to. */
  public static Playing again(Listener listener) {
    return new Playing(MOST_SPARE, listener);
  }

  /** Told how a measurement goes on, by the thread that measures. */
  public interface Listener {
    /**
     * A turn is over.
     *
     * @param turn from 1
     * @param turns how many the take has
     * @param peakDbfs the peak of the path's return, in dBFS; negative infinity for silence
     */
    void heard(int turn, int turns, double peakDbfs);

    /**
     * Sound was lost, and some turns are played again.
     *
     * @param turns how many
     * @param lost how many turns lost sound so far
     */
    void again(int turns, int lost);
  }
}
