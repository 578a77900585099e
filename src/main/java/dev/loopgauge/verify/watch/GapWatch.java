package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.ReturnPart;
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
  private final List<MissingSound> silent = new ArrayList<>();

  /** Takes the next window. */
  void next(WindowReading window) {
    double past = window.fromSeconds() - 2 * window.lengthSeconds();
    known.removeIf(gap -> end(gap) < past);
    silent.removeIf(gap -> end(gap) < past);
    for (ReturnPart part : window.parts()) {
      if (part.lost()) {
        silent.add(new MissingSound(part.fromSeconds(), 1000 * part.seconds()));
      }
    }
    window.delay().ifPresent(read -> hold(window, read));
  }

  /**
   * A window that holds little sound may be fitted badly: a gap counts once a second window shows
   * it too. In the middle of one window it lies at the edges of those beside, where none is found.
   */
  private void hold(WindowReading window, FollowedDelay read) {
    List<MissingSound> gaps = gaps(read);
    for (MissingSound gap : gaps) {
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
    seen.addAll(gaps);
  }

  /**
   * The gaps of a window, each as long as the return is silent around it though sound is due. What
   * is too short for the window alone counts where the return is that.
   */
  private List<MissingSound> gaps(FollowedDelay read) {
    List<MissingSound> gaps = new ArrayList<>();
    read.lost().stream().map(this::whole).forEach(gaps::add);
    read.doubtful().stream()
        .filter(gap -> contains(silent, gap))
        .map(this::whole)
        .forEach(gaps::add);
    return gaps;
  }

  private MissingSound whole(MissingSound gap) {
    double from = gap.atSeconds();
    double to = end(gap);
    for (MissingSound part : silent) {
      if (contains(List.of(part), gap)) {
        from = Math.min(from, part.atSeconds());
        to = Math.max(to, end(part));
      }
    }
    return new MissingSound(from, 1000 * (to - from));
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
