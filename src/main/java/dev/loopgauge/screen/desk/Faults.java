package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.screen.state.ScreenState.Fault;
import java.util.ArrayList;
import java.util.List;

/** What can be wrong with the built-in rig, for those who practise. */
final class Faults {
  /** Nothing is wrong. */
  static final String NONE = "";

  /** A watch knows by then how things were before. */
  private static final int WATCHED_SECONDS = 12;

  private Faults() {}

  /** Those that a chain can have. */
  static List<Fault> of(Chain chain) {
    List<Fault> faults = new ArrayList<>();
    faults.add(new Fault(NONE, "nothing"));
    if (chain.countsBlocks()) {
      int twice = 2 * chain.blockSize();
      faults.add(new Fault("block-size=" + twice, "the host runs at a block of " + twice));
      faults.add(
          new Fault(
              "block-size=" + twice + "@" + WATCHED_SECONDS,
              "after %d s of watching, the host goes to a block of %d"
                  .formatted(WATCHED_SECONDS, twice)));
    }
    faults.add(new Fault("inverted", "the polarity is inverted"));
    faults.add(new Fault("second-arrival=2.5:-2", "a second arrival, 2.5 ms later"));
    faults.add(new Fault("gain=30", "the return clips"));
    faults.add(new Fault("silent", "nothing comes back"));
    faults.add(new Fault("dropout=0.4:20", "20 ms of sound are lost"));
    faults.add(new Fault("noise=-30", "noise at -30 dBFS"));
    return faults;
  }
}
