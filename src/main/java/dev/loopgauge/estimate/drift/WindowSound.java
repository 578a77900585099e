package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.integrity.GapSearch;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.integrity.ZeroRuns;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Band;
import java.util.ArrayList;
import java.util.List;

/**
 * What a window holds besides its delay.
 *
 * @param bands the level by octave, where it can be told
 * @param gaps sound that the return lacks, in samples of the return from the window's start
 * @param doubtful the same, too short to be told by this alone
 * @param unexplained the share of the return's power that is not the reference's, 0 or more
 * @param centre how far the centre of the sound that tells the delay is behind the middle of the
 *     window, in samples
 */
public record WindowSound(
    List<Band> bands,
    List<LostSound.Gap> gaps,
    List<LostSound.Gap> doubtful,
    double unexplained,
    double centre) {
  /**
   * Three pieces of 5 ms: in 12,960 windows of programme in which nothing was lost, on four paths,
   * one piece was missing once, and no more ({@code ShortGapsTest}); a gap is told once two windows
   * show it. Digital silence proves a shorter loss.
   */
  private static final double SHORTEST_SECONDS = 0.0149;

  /** Nothing was asked for. */
  static final WindowSound NONE = new WindowSound(List.of(), List.of(), List.of(), 1, 0);

  /** Copies the lists. */
  public WindowSound {
    bands = List.copyOf(bands);
    gaps = List.copyOf(gaps);
    doubtful = List.copyOf(doubtful);
  }

  /**
   * What a fit tells.
   *
   * @param readings the parts of the window, their returns moved by a lag
   * @param lag by how much
   */
  static WindowSound of(List<Reading> readings, Fit fit, int lag) {
    List<LostSound.Gap> gaps = new ArrayList<>();
    for (Reading reading : readings) {
      for (LostSound.Gap zeros : ZeroRuns.of(reading, fit.measured())) {
        gaps.add(moved(zeros, lag));
      }
    }
    LostSound whole = whole(readings, fit);
    List<LostSound.Gap> doubtful = new ArrayList<>();
    if (gaps.isEmpty()) {
      int delay = lag + (int) Math.rint(fit.measured().lag());
      int shortest = readings.get(0).rate().samplesIn(SHORTEST_SECONDS);
      for (LostSound.Gap lost : GapSearch.of(whole)) {
        (lost.length() >= shortest ? gaps : doubtful).add(moved(lost, delay));
      }
    }
    double length = readings.stream().mapToInt(reading -> reading.reference().length()).sum();
    return new WindowSound(
        fit.bands(),
        gaps,
        doubtful,
        fit.residual().unexplained(),
        whole.centre().orElse(length / 2) - length / 2);
  }

  /** All parts as one, so that what is lost where two meet lies between sound. */
  static LostSound whole(List<Reading> readings, Fit fit) {
    LostSound whole = new LostSound(readings.get(0));
    fit.residualTests().lostSound().forEach(whole::add);
    return whole;
  }

  private static LostSound.Gap moved(LostSound.Gap gap, int by) {
    return new LostSound.Gap(gap.from() + by, gap.length());
  }
}
