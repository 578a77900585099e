package dev.loopgauge.job.live;

import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.KeepChoice;
import java.nio.file.Path;

/**
 * What to measure in a round.
 *
 * @param chain the chain file, whose paths say where they are patched
 * @param live what to play and record, and on which device
 * @param allowSamples the extra difference to allow on each path, in samples, 0 or more
 * @param rig what is wrong with the built-in rig
 * @param arrival which arrival is measured where there are several
 * @param keep whether to keep each path's result
 * @param goesOn whether to leave out the paths that the journal holds already
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record RoundRequest(
    Path chain,
    LiveChoice live,
    double allowSamples,
    RigChoice rig,
    ArrivalChoice arrival,
    KeepChoice keep,
    boolean goesOn,
    boolean agreed) {
  /**
   * Checks that there is a journal to go on from.
   *
   * @throws UsageException when there is none
   */
  public RoundRequest {
    if (goesOn && !keep.asked()) {
      throw new UsageException(
          "--continue goes on from what the journal holds, found no --journal",
          "name the journal, the show and --when of the round that was stopped");
    }
  }
}
