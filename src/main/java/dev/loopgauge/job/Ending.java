package dev.loopgauge.job;

import java.util.Collection;

/** How a job ended, from good to worst: of several the last one counts. */
public enum Ending {
  /** All good. */
  GOOD,
  /** Measured or predicted, but outside a budget or limit, or not shown to be inside. */
  OUTSIDE,
  /** No trustworthy measurement. */
  NOT_TRUSTWORTHY,
  /** The sound device or the audio server failed after something was heard. */
  SOUND_FAILED,
  /** The result is there, but could not be kept in the journal. */
  NOT_KEPT;

  /** The worst of several; good where there is none. */
  public static Ending worst(Collection<Ending> endings) {
    return endings.stream().max(Enum::compareTo).orElse(GOOD);
  }
}
