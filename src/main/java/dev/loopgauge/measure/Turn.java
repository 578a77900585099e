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
        schedule.played().slice(0, schedule.period()), cut(ret), before + schedule.start(index));
  }

  /** One return against another. */
  Reading againstReference(int reference, int ret) {
    return new Reading(cut(reference), cut(ret), before + schedule.start(index));
  }

  private Signal cut(int ret) {
    return returns.get(ret).slice(schedule.start(index), schedule.start(index + 1));
  }
}
