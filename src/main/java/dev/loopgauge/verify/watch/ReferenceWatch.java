package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Median;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Tells that a reference died: it is silent to the last bit for two windows with sound of their own
 * while the return is as loud as in most windows that were read. It is none where the return falls
 * to what other sound was in those windows, or may have become since: then all the programme
 * pauses, whatever else begins.
 */
final class ReferenceWatch {
  private static final int REMEMBERED = 31;

  /** No source: few pauses in which other sound is as loud as the programme last longer. */
  private static final double LONGEST_PAUSE_SECONDS = 60;

  /**
   * By how much louder other sound may be than in a window before, in dB: begun a second before its
   * end it fills half of one, and sound is 3 dB louder in some windows than in others (no source).
   */
  private static final double GROWS_DB = 6;

  private final Deque<Heard> read = new ArrayDeque<>();
  private Optional<WindowReading> since = Optional.empty();
  private boolean pauses;
  private double sentFrom;
  private double sentUntil;
  private boolean told;

  /** What a window that was read held, in dBFS rms: all together, and what is no programme. */
  private record Heard(double toSeconds, double all, double other) {
    static Heard of(WindowReading window, FollowedDelay delay) {
      double all = window.heardDbfs();
      return new Heard(window.toSeconds(), all, all + Decibels.ofPower(delay.unexplained()));
    }

    /** How loud what is no programme may become, where the reference still sounded after this. */
    double otherBefore(double sentFrom) {
      return toSeconds <= sentFrom ? other + GROWS_DB : other;
    }
  }

  /** Whether the reference is dead. */
  boolean isDead() {
    return told;
  }

  /** Takes the next window. */
  Optional<WatchEvent> next(WindowReading window) {
    window.delay().ifPresent(delay -> read.addLast(Heard.of(window, delay)));
    if (read.size() > REMEMBERED) {
      read.removeFirst();
    }
    boolean silent = window.sentDbfs() < WindowReading.SILENCE_DBFS;
    if (!silent) {
      sentFrom = window.fromSeconds();
      sentUntil = window.toSeconds();
    }
    boolean longSilent = window.toSeconds() - sentUntil > LONGEST_PAUSE_SECONDS;
    pauses &= silent && !longSilent;
    pauses |=
        silent && !longSilent && !window.interrupted() && window.heardDbfs() <= loudestOther();
    boolean dead = silent && !window.interrupted() && !pauses && window.heardDbfs() >= usual();
    if (!dead) {
      boolean ends = told && window.sentDbfs() >= WindowReading.SILENCE_DBFS;
      since = Optional.empty();
      told &= !ends;
      return ends
          ? Optional.of(new WatchEvent.Reference(Phase.ENDS, window.middleSeconds()))
          : Optional.empty();
    }
    if (since.isEmpty()) {
      since = Optional.of(window);
    }
    if (told || window.fromSeconds() < since.get().toSeconds()) {
      return Optional.empty();
    }
    told = true;
    return Optional.of(new WatchEvent.Reference(Phase.STARTS, since.get().fromSeconds()));
  }

  private double usual() {
    return read.isEmpty()
        ? Double.POSITIVE_INFINITY
        : Median.of(read.stream().mapToDouble(Heard::all).toArray());
  }

  private double loudestOther() {
    return read.stream()
        .mapToDouble(heard -> heard.otherBefore(sentFrom))
        .max()
        .orElse(Double.POSITIVE_INFINITY);
  }
}
