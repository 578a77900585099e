package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.SentLevel;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.verify.watch.Steady.Move;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Tells that a path's level changed. Each octave is compared with itself, so that another programme
 * is no other level where the path holds an equaliser, and windows with those whose programme is
 * like theirs ({@link Programme}), so that it is none where the path holds a compressor.
 */
final class LevelWatch {
  /** As between shows: less than this is no change, in dB. */
  private static final double LEAST_DB = 1;

  /** What an octave's level is off at least where the path isn't flat within it, in dB. */
  private static final double FLOOR_DB = 0.1;

  /**
   * For how many windows a compressor may remember what was loud: two seconds before the one that
   * is read. Few take longer to let go of it (common practice, no source).
   */
  private static final int REMEMBERED = 3;

  private final Steady level;
  private final Deque<SentLevel> sent = new ArrayDeque<>();
  private final Map<Double, Double> usual = new HashMap<>();
  private final Moves moves = new Moves(LEAST_DB);
  private double moved;

  /** Nothing was read yet. */
  LevelWatch(double windowSeconds) {
    this.level = new Steady(LEAST_DB, FalseAlarms.perTest(windowSeconds, 1));
  }

  /** Takes the next window; beside one that could not be read some sound may be lacking. */
  Optional<WatchEvent> next(WindowReading window) {
    sent.addLast(window.sent());
    if (sent.size() > REMEMBERED) {
      sent.removeFirst();
    }
    if (window.delay().isEmpty() || window.lacksSound()) {
      level.interrupt();
      return Optional.empty();
    }
    return next(window, window.delay().get());
  }

  private Optional<WatchEvent> next(WindowReading window, FollowedDelay read) {
    double sum = 0;
    double weights = 0;
    for (Band band : read.bands()) {
      if (usual.containsKey(band.centreHz())) {
        double weight = weight(band);
        sum += weight * (band.levelDb() - usual.get(band.centreHz()));
        weights += weight;
      }
    }
    if (weights == 0 && !usual.isEmpty()) {
      return Optional.empty();
    }
    double change = weights == 0 ? 0 : sum / weights;
    for (Band band : read.bands()) {
      usual.putIfAbsent(band.centreHz(), band.levelDb() - change);
    }
    if (weights == 0) {
      return Optional.empty();
    }
    return level
        .next(
            new Value(
                window.fromSeconds(),
                window.toSeconds(),
                window.middleSeconds(),
                change,
                1 / Math.sqrt(weights),
                Optional.of(SentLevel.loudest(sent))))
        .map(this::event);
  }

  private static double weight(Band band) {
    double noise = band.levelUncertaintyDb() / Measurement.COVERAGE_FACTOR;
    return 1 / (noise * noise + FLOOR_DB * FLOOR_DB);
  }

  /** Moves are added up from 0: where one comes from also goes by the programme. */
  private WatchEvent event(Move move) {
    Move added = new Move(moved, moved + move.change(), move.uncertainty(), move.first());
    moved = added.to();
    return new WatchEvent.Level(
        moves.phase(added), move.first().at(), move.change(), move.uncertainty());
  }

  /** Whether the level is another one than when the watch began. */
  boolean hasMoved() {
    return moves.areOpen();
  }
}
