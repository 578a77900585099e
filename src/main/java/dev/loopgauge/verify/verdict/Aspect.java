package dev.loopgauge.verify.verdict;

import java.util.Locale;

/** What a verdict speaks of, by the names that documents use. */
public enum Aspect {
  /** The delay against its budget. */
  DELAY,
  /** The return's sign against the reference. */
  POLARITY,
  /** Whether one arrival is the path. */
  ARRIVALS,
  /** Sound that the return lacks, or that came twice. */
  LOST_SOUND,
  /** Whether play and record run on one clock. */
  CLOCKS,
  /** How loud the return is. */
  LEVEL,
  /** How loud its octaves are against each other. */
  RESPONSE,
  /** Whether the return was driven into full scale so that its delay moved. */
  CLIPPING,
  /** The delay that host or plug-in report. */
  HOST,
  /** Sound against picture, as predicted. */
  PICTURE;

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
