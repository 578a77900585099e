package dev.loopgauge.journal;

/** What of a path can be compared between two measurements, by the names that documents use. */
public enum ComparedAspect {
  /** How late it is. */
  DELAY,
  /** Whether it is inverted. */
  POLARITY,
  /** Which copies of the sound come back. */
  ARRIVALS,
  /** Whether sound is lost. */
  LOST_SOUND,
  /** Whether both ends run on one clock. */
  CLOCKS,
  /** How loud it is. */
  LEVEL,
  /** How loud its octaves are against each other. */
  RESPONSE,
  /** Whether it is driven into full scale. */
  CLIPPING,
  /** How far the sound stands above the noise. */
  NOISE
}
