package dev.loopgauge.measure;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What came of measuring one path again and again: its delay, and the takes in which something
 * happened. It remembers no sound and a bounded number of moments, however long it goes on.
 */
public final class Soak {
  /** How many moments are remembered in words; later ones are only counted. */
  public static final int MOST_MOMENTS = 100;

  /** A delay that differs by more expanded uncertainties than this has moved: four standard. */
  private static final double MOVED = 2;

  /** Smaller moves are no step, whatever the uncertainty says: air and clocks breathe. */
  private static final double LEAST_STEP_SAMPLES = 0.1;

  /** What can happen in a take, the worst last. */
  public enum Kind {
    /** The delay moved and stayed a number. */
    STEP,
    /** Sound was lost or came twice. */
    DROPOUT,
    /** The take gave no trustworthy number for another reason. */
    UNREADABLE,
    /** The take could not be played or recorded to its end. */
    FAILED
  }

  /**
   * Something that happened.
   *
   * @param kind what
   * @param atSeconds when its take began, from the start of the soak, in seconds of sound
   * @param movedSamples how far the delay moved, 0 unless it is a step
   * @param text in words, one sentence
   */
  public record Moment(Kind kind, double atSeconds, double movedSamples, String text) {}

  private final double takeSeconds;
  private final Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
  private final List<Moment> moments = new ArrayList<>();
  private Optional<Moment> worst = Optional.empty();
  private Optional<Measurement> level = Optional.empty();
  private Optional<ClockDrift> drift = Optional.empty();
  private double leastSamples = Double.POSITIVE_INFINITY;
  private double mostSamples = Double.NEGATIVE_INFINITY;
  private int takes;
  private int clean;
  private int longestClean;

  /**
   * A soak of takes of one length.
   *
   * @param takeSeconds how long each take is, above 0
   */
  public Soak(double takeSeconds) {
    this.takeSeconds = takeSeconds;
  }

  /** Adds a take that was recorded to its end. */
  public void add(Estimate estimate) {
    if (estimate instanceof Estimate.Found found) {
      follow(found);
    } else {
      Finding why = estimate.findings().stream().filter(Finding::refuses).findFirst().orElseThrow();
      Kind kind = why.code() == FindingCode.DROPOUT ? Kind.DROPOUT : Kind.UNREADABLE;
      happened(new Moment(kind, seconds(), 0, why.text()));
    }
    takes++;
  }

  /** Adds a take that could not be recorded to its end. */
  public void add(CaptureException failure) {
    happened(new Moment(Kind.FAILED, seconds(), 0, failure.getMessage()));
    takes++;
  }

  /** A path that drifts off slowly is compared with where it was at its last step. */
  private void follow(Estimate.Found found) {
    Measurement now = found.measurement();
    double samples = now.delay().samples();
    leastSamples = Math.min(leastSamples, samples);
    mostSamples = Math.max(mostSamples, samples);
    Measurement before = level.orElse(now);
    double moved = samples - before.delay().samples();
    double sure = MOVED * Math.hypot(now.uncertaintySamples(), before.uncertaintySamples());
    if (Math.abs(moved) > Math.max(sure, LEAST_STEP_SAMPLES)) {
      level = Optional.of(now);
      happened(new Moment(Kind.STEP, seconds(), moved, "the delay moved"));
      return;
    }
    level = Optional.of(before);
    drift = drift.or(() -> drift(found));
    Optional<Finding> lost = finding(found, FindingCode.DROPOUT);
    if (lost.isPresent()) {
      happened(new Moment(Kind.DROPOUT, seconds(), 0, lost.get().text()));
      return;
    }
    clean++;
    longestClean = Math.max(longestClean, clean);
  }

  private static Optional<ClockDrift> drift(Estimate.Found found) {
    return finding(found, FindingCode.CLOCKS_NOT_LOCKED)
        .flatMap(f -> found.measurement().clockDrift());
  }

  private static Optional<Finding> finding(Estimate.Found found, FindingCode code) {
    return found.findings().stream().filter(f -> f.code() == code).findFirst();
  }

  private void happened(Moment moment) {
    clean = 0;
    counts.merge(moment.kind(), 1, Integer::sum);
    if (moments.size() < MOST_MOMENTS) {
      moments.add(moment);
    }
    if (worst.isEmpty() || isWorse(moment, worst.get())) {
      worst = Optional.of(moment);
    }
  }

  private static boolean isWorse(Moment one, Moment other) {
    int byKind = one.kind().compareTo(other.kind());
    return byKind == 0 ? Math.abs(one.movedSamples()) > Math.abs(other.movedSamples()) : byKind > 0;
  }

  /** How much sound went by so far, in seconds. */
  public double seconds() {
    return takes * takeSeconds;
  }

  /** How many takes there were. */
  public int takes() {
    return takes;
  }

  /** How many takes there were in which something of this kind happened. */
  public int count(Kind kind) {
    return counts.getOrDefault(kind, 0);
  }

  /** How many takes there were in which anything happened. */
  public int oddTakes() {
    return counts.values().stream().mapToInt(count -> count).sum();
  }

  /** Whether nothing happened. */
  public boolean isClean() {
    return worst.isEmpty();
  }

  /** The longest time in a row in which nothing happened, in seconds of sound. */
  public double longestCleanSeconds() {
    return longestClean * takeSeconds;
  }

  /** The worst moment; empty if nothing happened. */
  public Optional<Moment> worst() {
    return worst;
  }

  /** The first moments in which something happened. */
  public List<Moment> moments() {
    return List.copyOf(moments);
  }

  /** How the clocks drift apart in the first take that shows it; empty where none does. */
  public Optional<ClockDrift> drift() {
    return drift;
  }

  /** The delay since its last step; empty if none was ever read. */
  public Optional<Measurement> level() {
    return level;
  }

  /** How far the delay ranged, in samples; 0 if none was read. */
  public double rangeSamples() {
    return level.isPresent() ? mostSamples - leastSamples : 0;
  }
}
