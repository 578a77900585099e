package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.ChangeTime;
import java.util.Optional;

/** Looks into a path's sound for the moment at which its delay changed. */
public interface Dating {
  /**
   * The moment; empty where the sound is gone.
   *
   * @param fromSeconds the earliest it can be
   * @param toSeconds the latest
   * @param beforeSamples the delay before
   * @param afterSamples the delay after
   */
  Optional<ChangeTime> changed(
      double fromSeconds, double toSeconds, double beforeSamples, double afterSamples);
}
