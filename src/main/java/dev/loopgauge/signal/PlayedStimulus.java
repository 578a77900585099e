package dev.loopgauge.signal;

/**
 * A stimulus at the level at which it is played or written: the one place where kind, length and
 * level become samples.
 *
 * @param kind the kind of stimulus
 * @param seconds how long it lasts, within what the kind allows
 * @param levelDbfs its peak, in dB relative to full scale, finite and at most 0
 */
public record PlayedStimulus(StimulusKind kind, double seconds, double levelDbfs) {
  /**
   * Checks length and level.
   *
   * @throws IllegalArgumentException when the kind can't be that short or that long, or when the
   *     level is above full scale or not a number
   */
  public PlayedStimulus {
    kind.of(seconds);
    if (!(levelDbfs <= 0 && Double.isFinite(levelDbfs))) {
      throw new IllegalArgumentException(
          "a stimulus must be played at 0 dBFS or below, not at " + levelDbfs + " dBFS");
    }
  }

  /** The samples; their peak reaches the level, or stays a little below it, and never passes it. */
  public Signal render(SampleRate rate) {
    return kind.of(seconds).render(rate).times(Decibels.toFactor(levelDbfs));
  }
}
