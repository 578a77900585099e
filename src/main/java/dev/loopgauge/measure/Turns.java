package dev.loopgauge.measure;

import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.DeviceRate;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.signal.SameSamples;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The turns of a measurement that were played so far.
 *
 * @param clean those in which nothing was lost, in their order
 * @param incidents what happened in the others
 * @param lost how many turns lost sound
 * @param frames how many frames were planned so far
 * @param rate how far the device's rate is off, by the take that told it last
 */
record Turns(
    List<Turn> clean, List<Incident> incidents, int lost, int frames, Optional<DeviceRate> rate) {
  /**
   * How long after it happened an incident may be noticed at the latest, in s: the measuring thread
   * looks every 20 ms, and a busy computer lets it wait.
   */
  private static final double NOTICED_WITHIN_SECONDS = 0.25;

  /** None yet. */
  static Turns none() {
    return new Turns(List.of(), List.of(), 0, 0, Optional.empty());
  }

  /** These and those of another take. */
  Turns with(Schedule schedule, Capture capture) {
    List<Turn> all = new ArrayList<>(clean);
    for (int turn = 0; turn < schedule.turns(); turn++) {
      if (isClean(schedule, turn, capture.incidents())) {
        all.add(new Turn(schedule, turn, frames, capture.returns()));
      }
    }
    List<Incident> happened = new ArrayList<>(incidents);
    happened.addAll(capture.incidents());
    int dirty = schedule.turns() - (all.size() - clean.size());
    return new Turns(
        all, happened, lost + dirty, frames + schedule.frames(), capture.rate().or(() -> rate));
  }

  private static boolean isClean(Schedule schedule, int turn, List<Incident> incidents) {
    int noticed = schedule.played().rate().samplesIn(NOTICED_WITHIN_SECONDS);
    int from = turn == 0 ? 0 : schedule.start(turn);
    int to = schedule.start(turn + 1) + schedule.after();
    return incidents.stream()
        .noneMatch(
            incident ->
                incident.frame() + incident.frames() >= from && incident.frame() - noticed < to);
  }

  /** Whether two returns are sample for sample the same in each clean turn. */
  boolean areAlike(int one, int other) {
    return clean.stream()
        .allMatch(turn -> SameSamples.of(turn.returns().get(one), turn.returns().get(other)));
  }

  /** Whether there are as many clean turns as planned, and none of them is in doubt. */
  boolean areEnough(int planned) {
    return clean.size() >= planned && !areInDoubt();
  }

  /** Whether something happened after which no turn of the take can be trusted. */
  boolean areInDoubt() {
    return incidents.stream().anyMatch(i -> i.kind() == Incident.Kind.BLOCK_SIZE_CHANGED);
  }
}
