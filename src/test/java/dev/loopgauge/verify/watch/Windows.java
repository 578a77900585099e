package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.ReturnPart;
import dev.loopgauge.estimate.result.SentLevel;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Windows of two seconds, one a second, as a tracker would read them. */
final class Windows {
  static final SampleRate RATE = new SampleRate(48_000);
  static final double LENGTH = 2;

  private static final double UNEXPLAINED = 1e-4;

  /** A window that starts a second later than the one before tells of its second half. */
  private static final double[] THERE = {LENGTH - 1, LENGTH - 0.99};

  private final Dating dating;
  private final PathWatch watch = new PathWatch(RATE, LENGTH);
  private final List<WatchEvent> events = new ArrayList<>();
  private double at;

  /** Windows whose sound is gone once they are read. */
  Windows() {
    this((from, to, before, after) -> Optional.empty());
  }

  /** Windows whose sound is looked into. */
  Windows(Dating dating) {
    this.dating = dating;
  }

  /** Reads a delay of some samples, at a level, in the next window. */
  Windows read(double samples, double uncertainty, double levelDb, boolean inverted) {
    return take(-20, -20, THERE, delay(samples, uncertainty, levelDb, inverted, List.of()));
  }

  /** Reads the next window of a return that holds a share of other sound. */
  Windows readBeside(double heardDbfs, double unexplained) {
    return take(
        SentLevel.even(-20),
        heardDbfs,
        THERE,
        new double[0],
        delay(595, 0.02, -6, false, List.of(), List.of(), unexplained));
  }

  /** Reads a level in the next window, of some programme. */
  Windows readOf(SentLevel sent, double levelDb) {
    return take(sent, -20, THERE, new double[0], delay(595, 0.02, levelDb, false, List.of()));
  }

  /** The same a number of times. */
  Windows read(int times, double samples) {
    for (int i = 0; i < times; i++) {
      read(samples, 0.02, -6, false);
    }
    return this;
  }

  /** The same with a gap. */
  Windows readWithGap(double samples, double gapAt, double ms) {
    return take(
        -20, -20, THERE, delay(samples, 0.02, -6, false, List.of(new MissingSound(gapAt, ms))));
  }

  /** The same with one that is too short for the window alone, and with sound lost in parts. */
  Windows readWithDoubt(double samples, double gapAt, double ms, double... lostFromTo) {
    return readWithDoubt(THERE, samples, gapAt, ms, lostFromTo);
  }

  /** The same, sound being there in other parts, if any. */
  Windows readWithDoubt(
      double[] there, double samples, double gapAt, double ms, double... lostFromTo) {
    List<MissingSound> doubtful = List.of(new MissingSound(gapAt, ms));
    return take(
        SentLevel.even(-20),
        -20,
        there,
        lostFromTo,
        delay(samples, 0.02, -6, false, List.of(), doubtful, UNEXPLAINED));
  }

  /** Reads nothing in the next window, with sound that was due lost in parts of it. */
  Windows nothing(double sentDbfs, double heardDbfs, double... lostFromTo) {
    return take(SentLevel.even(sentDbfs), heardDbfs, new double[0], lostFromTo, Optional.empty());
  }

  /** Reads a delay in the next window, which lacks sound in parts of it. */
  Windows readWithout(double samples, double... lostFromTo) {
    return take(
        SentLevel.even(-20), -20, THERE, lostFromTo, delay(samples, 0.02, -6, false, List.of()));
  }

  private Optional<FollowedDelay> delay(
      double samples,
      double uncertainty,
      double levelDb,
      boolean inverted,
      List<MissingSound> lost) {
    return delay(samples, uncertainty, levelDb, inverted, lost, List.of(), UNEXPLAINED);
  }

  private Optional<FollowedDelay> delay(
      double samples,
      double uncertainty,
      double levelDb,
      boolean inverted,
      List<MissingSound> lost,
      List<MissingSound> doubtful,
      double unexplained) {
    TrackPoint point = new TrackPoint(at + LENGTH / 2, new Latency(samples, RATE), uncertainty);
    return Optional.of(
        new FollowedDelay(
            point,
            point,
            levelDb,
            inverted,
            List.of(new Band(1000, samples, uncertainty, levelDb, 0.1)),
            lost,
            doubtful,
            unexplained));
  }

  private Windows take(double sent, double heard, double[] there, Optional<FollowedDelay> delay) {
    return take(SentLevel.even(sent), heard, there, new double[0], delay);
  }

  private Windows take(
      SentLevel sent, double heard, double[] there, double[] lost, Optional<FollowedDelay> delay) {
    List<ReturnPart> parts = new ArrayList<>();
    for (int i = 0; i < there.length; i += 2) {
      parts.add(new ReturnPart(at + there[i], at + there[i + 1], false));
    }
    for (int i = 0; i < lost.length; i += 2) {
      parts.add(new ReturnPart(at + lost[i], at + lost[i + 1], true));
    }
    parts.sort(Comparator.comparingDouble(ReturnPart::fromSeconds));
    events.addAll(
        watch.next(
            new WindowReading(at, at + LENGTH, sent, heard, false, false, parts, delay), dating));
    at++;
    return this;
  }

  /** When the next window starts. */
  double at() {
    return at;
  }

  List<WatchEvent> events() {
    return events;
  }

  /** What is still told when the watch ends. */
  List<WatchEvent> finish() {
    return watch.finish();
  }

  PathStatus status() {
    return watch.status().orElseThrow();
  }
}
