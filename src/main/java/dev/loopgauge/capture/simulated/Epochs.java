package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The rig from the start of a take or stream on, as its faults begin and end.
 *
 * @param all one after the other; the last never ends
 */
record Epochs(List<Epoch> all) {
  Epochs {
    all = List.copyOf(all);
  }

  /**
   * Wires the rig anew wherever a fault begins or ends.
   *
   * @throws FaultFormatException when a fault names a stage that the path's loop hasn't, or a path
   *     that is not plugged in
   */
  static Epochs of(Chain chain, Plugs plugs, List<PathFault> faults, SampleRate rate) {
    List<Double> cuts = List.copyOf(cuts(faults));
    List<Epoch> epochs = new ArrayList<>();
    for (int i = 0; i < cuts.size(); i++) {
      double start = cuts.get(i);
      long end = i + 1 < cuts.size() ? frame(cuts.get(i + 1), rate) : Long.MAX_VALUE;
      List<PathFault> held = faults.stream().filter(fault -> fault.when().holdsAt(start)).toList();
      epochs.add(new Epoch(frame(start, rate), end, new Wiring(chain, plugs, held, rate)));
    }
    return new Epochs(epochs);
  }

  private static SortedSet<Double> cuts(List<PathFault> faults) {
    SortedSet<Double> cuts = new TreeSet<>(List.of(0.0));
    for (PathFault fault : faults) {
      cuts.add(fault.when().from());
      if (Double.isFinite(fault.when().to())) {
        cuts.add(fault.when().to());
      }
    }
    return cuts;
  }

  private static long frame(double seconds, SampleRate rate) {
    return Math.round(seconds * rate.hertz());
  }

  /** Those that have frames in a stretch. */
  List<Epoch> during(long from, long to) {
    return all.stream().filter(epoch -> epoch.from() < to && epoch.to() > from).toList();
  }
}
