package dev.loopgauge.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One state of a plug-in against the one that the others are compared with: bypassed, or else the
 * first.
 *
 * @param reading what was read
 * @param path how much later the path is than in that state; empty in that state itself
 * @param witness how much later the other channel is, where one was watched
 * @param host what that says about what is reported; empty where nothing follows
 */
public record StateCheck(
    StateReading reading, Optional<Shift> path, Optional<Shift> witness, Optional<HostCheck> host) {
  /** The state that a plug-in adds nothing in. */
  public static final String BYPASSED = "bypassed";

  /** What a reported delay is the delay of. */
  public enum Reported {
    /** Of the whole path. */
    PATH,
    /** Of the plug-in alone: what the path has more than when it is bypassed. */
    PLUGIN
  }

  /**
   * Checks all states of one plug-in.
   *
   * @param readings at one sample rate, each state once, the sound card's own delay either out of
   *     all of them or the same in all of them; at least one
   * @param of what the reported delays are the delay of
   * @throws IllegalArgumentException when the rates differ
   */
  public static List<StateCheck> of(List<StateReading> readings, Reported of) {
    StateReading base =
        readings.stream()
            .filter(reading -> reading.state().equals(BYPASSED))
            .findFirst()
            .orElse(readings.get(0));
    List<StateCheck> checks = new ArrayList<>();
    for (StateReading reading : readings) {
      boolean isBase = reading.state().equals(base.state());
      checks.add(
          new StateCheck(
              reading,
              isBase ? Optional.empty() : Optional.of(Shift.between(base.path(), reading.path())),
              isBase ? Optional.empty() : witness(base, reading),
              of == Reported.PATH
                  ? ofPath(reading)
                  : isBase ? Optional.empty() : added(base, reading)));
    }
    return List.copyOf(checks);
  }

  private static Optional<Shift> witness(StateReading base, StateReading reading) {
    return base.witness()
        .flatMap(before -> reading.witness().map(now -> Shift.between(before, now)));
  }

  private static Optional<HostCheck> ofPath(StateReading reading) {
    return reading.reported().map(reported -> HostCheck.of(reading.path(), reported));
  }

  private static Optional<HostCheck> added(StateReading base, StateReading reading) {
    return Optional.of(HostCheck.added(reading.path(), base.path(), reading.reported()));
  }

  /** Whether the delay is another than is reported. */
  public boolean fails() {
    return host.filter(HostCheck::fails).isPresent();
  }

  /** Whether the host moved the other channel too, as one does that pads it to match. */
  public boolean movedOthers() {
    return witness.filter(Shift::moved).isPresent();
  }
}
