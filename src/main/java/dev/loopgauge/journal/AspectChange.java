package dev.loopgauge.journal;

import dev.loopgauge.verify.Shift;
import java.util.Optional;

/** Something about a path that is not as it was at an earlier measurement. */
public sealed interface AspectChange {
  /** What changed. */
  ComparedAspect aspect();

  /**
   * The delay.
   *
   * @param shift how much later the path is, in samples of the later measurement
   * @param ms the same in ms
   */
  record Delay(Shift shift, double ms) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.DELAY;
    }
  }

  /**
   * There is no trustworthy reading any more.
   *
   * @param silent whether nothing, or next to nothing, was heard
   * @param why what was found instead, where no {@link Found} tells it
   */
  record Refused(boolean silent, Optional<String> why) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.DELAY;
    }
  }

  /**
   * The polarity.
   *
   * @param inverted what it is now
   */
  record Polarity(boolean inverted) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.POLARITY;
    }
  }

  /**
   * A copy of the sound that came, went, or got louder or quieter.
   *
   * @param laterMs how much later it is than the measured one, in ms; negative for earlier
   * @param before its amplitude against the measured one's; 0 where it was not there
   * @param after the same now
   */
  record Arrival(double laterMs, double before, double after) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.ARRIVALS;
    }
  }

  /**
   * The level.
   *
   * @param byDb how much louder it is, in dB
   */
  record Level(double byDb) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.LEVEL;
    }
  }

  /**
   * The levels of octaves against each other.
   *
   * @param centreHz the octave that changed most, in Hz
   * @param byDb how much louder that is, beside what the octaves have in common, in dB
   * @param octaves how many octaves changed
   */
  record Response(double centreHz, double byDb, int octaves) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.RESPONSE;
    }
  }

  /**
   * The noise.
   *
   * @param byDb how much less the sound stands above it, beside what the level makes, in dB
   */
  record Noise(double byDb) implements AspectChange {
    @Override
    public ComparedAspect aspect() {
      return ComparedAspect.NOISE;
    }
  }

  /**
   * Something that was found at one of the measurements only.
   *
   * @param aspect what it is about
   * @param told what was found
   * @param gone whether it was found at the earlier one
   */
  record Found(ComparedAspect aspect, MeasuredSummary.Told told, boolean gone)
      implements AspectChange {}
}
