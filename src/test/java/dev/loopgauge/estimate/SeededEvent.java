package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.watch.WatchEvent;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Something that happens to a path at a time, and what should be told of it.
 *
 * @param size in samples, ppm or ms, by the kind
 * @param atSeconds when it happens
 * @param path what comes back
 */
record SeededEvent(Kind kind, double size, double atSeconds, PathSound path) {
  /** What may happen. */
  enum Kind {
    STEP,
    DRIFT,
    LOST,
    BYPASS,
    POLARITY
  }

  private static final int BLOCK = 64;
  private static final double DELAY = 200;
  private static final double FACTOR = 0.5;

  /** What a bypassed stage leaves louder. */
  private static final double BYPASS_DB = 3;

  /** Losses are told to a frame of 20 ms either way ({@code ReturnPresence}), in seconds. */
  private static final double EDGE_SECONDS = 0.02;

  /** What was told, compared with what happened. */
  enum Judged {
    RIGHT,
    NOT_TOLD,
    LATE,
    WRONG
  }

  /** One of a kind, drawn. */
  static SeededEvent of(
      Kind kind, SampleRate rate, double[] programme, double earliest, SplittableRandom random) {
    double at = Loud.from(programme, rate, earliest + 4 * random.nextDouble());
    int from = rate.samplesIn(at);
    int sign = random.nextBoolean() ? 1 : -1;
    PathSound plain = PathSound.late(DELAY, FACTOR);
    return switch (kind) {
      case STEP -> {
        double size = sign * (1 + random.nextInt(3 * BLOCK));
        yield new SeededEvent(
            kind, size, at, plain.until(from, PathSound.late(DELAY + size, FACTOR)));
      }
      case DRIFT -> {
        double ppm = sign * 0.5 * Math.pow(200, random.nextDouble());
        yield new SeededEvent(
            kind,
            ppm,
            at,
            PathSound.sliding(n -> n - DELAY - ppm * 1e-6 * Math.max(0, n - from), FACTOR));
      }
      case LOST -> {
        double ms = 25 * Math.pow(160, random.nextDouble());
        yield new SeededEvent(kind, ms, at, plain.silent(from, from + rate.samplesIn(ms / 1000)));
      }
      case BYPASS -> {
        double size = 8 + random.nextInt(256);
        double quieter = FACTOR * Math.pow(10, -BYPASS_DB / 20);
        yield new SeededEvent(
            kind, -size, at, PathSound.late(DELAY + size, quieter).until(from, plain));
      }
      case POLARITY ->
          new SeededEvent(kind, -1, at, plain.until(from, PathSound.late(DELAY, -FACTOR)));
    };
  }

  /**
   * What came of it.
   *
   * @param programme what was played
   * @param latest until when it must be told, in seconds
   */
  Judged judge(List<WatchedSound.Told> told, double[] programme, SampleRate rate, double latest) {
    List<WatchedSound.Told> started =
        told.stream().filter(t -> t.event().phase() == Phase.STARTS).toList();
    if (started.isEmpty()) {
      return Judged.NOT_TOLD;
    }
    boolean level = kind == Kind.BYPASS && isLevel(started.get(started.size() - 1).event());
    if (started.size() > (level ? 2 : 1) || !isRight(started.get(0).event(), programme, rate)) {
      return Judged.WRONG;
    }
    return started.get(0).bySeconds() <= latest ? Judged.RIGHT : Judged.LATE;
  }

  private static boolean isLevel(WatchEvent event) {
    return event instanceof WatchEvent.Level level
        && Math.abs(level.changeDb() - BYPASS_DB) <= 2 * level.uncertaintyDb();
  }

  private boolean isRight(WatchEvent event, double[] programme, SampleRate rate) {
    return switch (kind) {
      case STEP, BYPASS ->
          event instanceof WatchEvent.Step step
              && Math.abs(step.change().samples() - size) <= 2 * step.uncertaintySamples()
              && Math.abs(step.atSeconds() - atSeconds) <= step.withinSeconds();
      case DRIFT ->
          event instanceof WatchEvent.Drift drift
              && Math.abs(drift.drift().ppm() - size) <= 2 * drift.drift().uncertaintyPpm();
      case LOST -> event instanceof WatchEvent.LostSound lost && isWithin(lost, programme, rate);
      case POLARITY ->
          event instanceof WatchEvent.Polarity polarity
              && polarity.inverted()
              && Math.abs(polarity.atSeconds() - atSeconds) <= 2;
    };
  }

  /** All that was loud enough to be missed is told, and nothing beyond what was lost. */
  private boolean isWithin(WatchEvent.LostSound lost, double[] programme, SampleRate rate) {
    double later = DELAY / rate.hertz();
    double end = atSeconds + size / 1000;
    double[] loud = Loud.within(programme, rate, atSeconds - later, end - later);
    double from = lost.atSeconds();
    double to = from + lost.ms().orElse(size) / 1000;
    return from >= atSeconds - EDGE_SECONDS
        && from <= loud[0] + later + EDGE_SECONDS
        && to >= loud[1] + later - EDGE_SECONDS
        && to <= end + EDGE_SECONDS;
  }

  /** Where a programme is loud. */
  static final class Loud {
    private static final double PIECE = 0.005;

    /** As {@code WindowSound}: what is shorter is no loss by itself, in seconds. */
    private static final double SHORTEST = 0.0149;

    /** As {@code ReturnPresence}: what holds less of a piece's mean energy tells nothing. */
    private static final double ENOUGH = 0.05;

    private Loud() {}

    /** The loudest 20 ms of the second from a time on: in a pause nothing can happen. */
    static double from(double[] programme, SampleRate rate, double earliest) {
      double most = 0;
      double best = earliest;
      for (double at = earliest; at < earliest + 1; at += 0.02) {
        double energy = energy(programme, rate, at, at + 0.02);
        if (energy > most) {
          most = energy;
          best = at;
        }
      }
      return best;
    }

    /**
     * Where the first loud piece between two times starts and the last one ends. A pause as long as
     * a frame may cut less than the shortest loss off at either end: that counts for nothing.
     */
    static double[] within(double[] programme, SampleRate rate, double from, double to) {
      double enough = ENOUGH * energy(programme, rate, from - 1, to + 1) * PIECE / (to - from + 2);
      List<double[]> sounds = new ArrayList<>();
      for (double at = from; at < to; at += PIECE) {
        if (energy(programme, rate, at, at + PIECE) >= enough) {
          double ends = Math.min(to, at + PIECE);
          if (sounds.isEmpty() || at > sounds.get(sounds.size() - 1)[1] + EDGE_SECONDS) {
            sounds.add(new double[] {at, ends});
          }
          sounds.get(sounds.size() - 1)[1] = ends;
        }
      }
      List<double[]> told = sounds.stream().filter(s -> s[1] - s[0] >= SHORTEST).toList();
      return told.isEmpty()
          ? new double[] {to, from}
          : new double[] {told.get(0)[0], told.get(told.size() - 1)[1]};
    }

    private static double energy(double[] programme, SampleRate rate, double from, double to) {
      double energy = 0;
      int end = Math.min(programme.length, rate.samplesIn(Math.max(0, to)));
      for (int n = rate.samplesIn(Math.max(0, from)); n < end; n++) {
        energy += programme[n] * programme[n];
      }
      return energy;
    }
  }
}
