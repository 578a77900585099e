package dev.loopgauge.measure;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.Signal;
import java.util.List;

/**
 * One turn of a take, cut out of it.
 *
 * @param schedule how the take was planned
 * @param index which turn of it, from 0
 * @param before how many frames were planned before this take
 * @param returns the take's returns
 */
record Turn(Schedule schedule, int index, int before, List<Signal> returns) {
  /** One return against what was played. */
  Reading againstPlayed(int ret) {
    return new Reading(
        schedule.played().slice(0, schedule.period()), cut(ret, 0), before + start(0));
  }

  /**
   * One return against another.
   *
   * @param late by how many frames the card is late, so that the turn begins there
   */
  Reading againstReference(int reference, int ret, int late) {
    return new Reading(cut(reference, late), cut(ret, late), before + start(late));
  }

  private Signal cut(int ret, int late) {
    return returns.get(ret).slice(start(late), start(late) + schedule.period());
  }

  private int start(int late) {
    return schedule.start(index) + late;
  }
}
