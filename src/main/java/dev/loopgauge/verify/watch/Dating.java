package dev.loopgauge.verify.watch;

import java.util.OptionalDouble;

/** Looks into a path's sound for the moment at which its delay changed. */
public interface Dating {
  /**
   * The moment, in seconds from the start of the stream; empty where the sound is gone.
   *
   * @param fromSeconds the earliest it can be
   * @param toSeconds the latest
   * @param beforeSamples the delay before
   * @param afterSamples the delay after
   */
  OptionalDouble changed(
      double fromSeconds, double toSeconds, double beforeSamples, double afterSamples);
}
