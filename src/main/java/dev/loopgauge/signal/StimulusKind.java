package dev.loopgauge.signal;

import java.util.Locale;

/** The kinds of stimulus by the names that options and documents use. */
public enum StimulusKind {
  /** A band-limited click: short, quiet in energy; for quick looks and for the ear. */
  CLICK {
    @Override
    public Stimulus of(double seconds) {
      return new Click(seconds);
    }
  },
  /** An exponential sweep: the most energy for its peak, and kind to loudspeakers. */
  SWEEP {
    @Override
    public Stimulus of(double seconds) {
      return ExponentialSweep.fullBand(seconds);
    }
  },
  /** A maximum-length sequence: noise-like, little troubled by other sound in the room. */
  MLS {
    @Override
    public Stimulus of(double seconds) {
      return new MaximumLengthSequence(seconds);
    }
  };

  /**
   * The stimulus of this kind that lasts {@code seconds}, or the nearest that its method allows.
   *
   * @throws IllegalArgumentException when the kind can't be that short or that long
   */
  public abstract Stimulus of(double seconds);

  /** The name in options and documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
