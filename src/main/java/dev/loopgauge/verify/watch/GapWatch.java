package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.WindowReading;
import java.util.ArrayList;
import java.util.List;

/** Gaps that windows show: which of them count, each once. */
final class GapWatch {
  /** Gaps are found in steps of 5 ms; the same one is told alike to two of them, in seconds. */
  private static final double SAME_SECONDS = 0.01;

  /** What lies so near to a window's edge may have no sound beside it there, in seconds. */
  private static final double MIDDLE_SECONDS = 0.1;

  private final List<MissingSound> known = new ArrayList<>();
  private final List<MissingSound> seen = new ArrayList<>();
  private final List<MissingSound> held = new ArrayList<>();

  /** Takes the next window. */
  void next(WindowReading window) {
    known.removeIf(gap -> end(gap) < window.fromSeconds() - 2 * window.lengthSeconds());
    window.delay().ifPresent(read -> hold(window, read));
  }

  /**
   * A window that holds little sound may be fitted badly: a gap counts once a second window shows
   * it too. In the middle of one window it lies at the edges of those beside, where none is found.
   */
  private void hold(WindowReading window, FollowedDelay read) {
    for (MissingSound gap : read.lost()) {
      if (contains(known, gap)) {
        continue;
      }
      boolean middle = Math.abs(gap.atSeconds() - window.middleSeconds()) < MIDDLE_SECONDS;
      if (middle || contains(seen, gap)) {
        known.add(gap);
        held.add(gap);
      }
    }
    seen.clear();
    seen.addAll(read.lost());
  }

  /** Something longer was lost: gaps within it are that. */
  void knows(MissingSound loss) {
    known.add(loss);
    held.removeIf(gap -> contains(List.of(loss), gap));
  }

  /** Delay or polarity changed at a time: windows that hold it tell nothing of gaps. */
  void changed(double atSeconds, double windowSeconds) {
    held.removeIf(gap -> Math.abs(gap.atSeconds() - atSeconds) <= windowSeconds);
  }

  /** Those that end before a time and weren't asked for yet. */
  List<MissingSound> due(double before) {
    List<MissingSound> due = held.stream().filter(gap -> end(gap) <= before).toList();
    held.removeAll(due);
    return due;
  }

  private static boolean contains(List<MissingSound> gaps, MissingSound gap) {
    for (MissingSound other : gaps) {
      if (gap.atSeconds() < end(other) + SAME_SECONDS
          && end(gap) > other.atSeconds() - SAME_SECONDS) {
        return true;
      }
    }
    return false;
  }

  static double end(MissingSound gap) {
    return gap.atSeconds() + gap.ms() / 1000;
  }
}
