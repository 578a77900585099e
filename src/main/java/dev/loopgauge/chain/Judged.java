package dev.loopgauge.chain;

import java.util.Optional;

/**
 * The delay that a listener's limits are applied to.
 *
 * @param ms how long it is, in ms, 0 or more
 * @param against what it is counted from
 * @param position where that is heard, if it is one of the chain's positions
 * @param earlier the path that is heard first there, where it is counted from one
 */
public record Judged(
    double ms, Against against, Optional<String> position, Optional<String> earlier) {
  /** What a delay is counted from. */
  public enum Against {
    /** The source: the whole path counts. */
    SOURCE,
    /** The source, air left out: nothing is stated of what else the seat hears. */
    SOURCE_WITHOUT_AIR,
    /** The sound that comes straight from the source. */
    DIRECT_SOUND,
    /** An earlier path of the same input. */
    EARLIER_PATH
  }

  static Judged fromSource(double ms, Optional<String> position) {
    return new Judged(ms, Against.SOURCE, position, Optional.empty());
  }

  static Judged withoutAir(double ms) {
    return new Judged(ms, Against.SOURCE_WITHOUT_AIR, Optional.empty(), Optional.empty());
  }

  static Judged afterDirectSound(double ms, Optional<String> position) {
    return new Judged(ms, Against.DIRECT_SOUND, position, Optional.empty());
  }

  static Judged afterPath(double ms, String position, String earlier) {
    return new Judged(ms, Against.EARLIER_PATH, Optional.of(position), Optional.of(earlier));
  }

  /** What it is counted from, in words: {@code tower-feed at tower}. */
  public String counted() {
    String from =
        switch (against) {
          case SOURCE -> "source";
          case SOURCE_WITHOUT_AIR -> "source, without air";
          case DIRECT_SOUND -> SeatArrival.DIRECT_SOUND;
          case EARLIER_PATH -> earlier.orElseThrow();
        };
    return position.isPresent() ? from + " at " + position.get() : from;
  }
}
