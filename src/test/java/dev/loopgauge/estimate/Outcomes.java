package dev.loopgauge.estimate;

import dev.loopgauge.estimate.measurand.FilteredOutcomes;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * What the estimator makes of returns of every kind, a line each, so that two editions of it can be
 * compared: {@code src/bench/thresholds.py} runs it for each threshold that is taken away.
 */
final class Outcomes {
  private static final int EVENINGS = 6;
  private static final int PATTERNS = 24;
  private static final int[] NOISES = {60, 40, 20, 10};

  /** Something that happens to a path, and how much of it. */
  private record Event(OneDelayTrial.Change change, double size) {}

  private static final List<Event> EVENTS =
      List.of(
          new Event(OneDelayTrial.Change.NOTHING, 0),
          new Event(OneDelayTrial.Change.DRIFT, 30),
          new Event(OneDelayTrial.Change.DRIFT, 300),
          new Event(OneDelayTrial.Change.STEP, -2),
          new Event(OneDelayTrial.Change.STEP, 64),
          new Event(OneDelayTrial.Change.STEP, 512),
          new Event(OneDelayTrial.Change.GAP, 10),
          new Event(OneDelayTrial.Change.GAP, 50),
          new Event(OneDelayTrial.Change.LEVEL, -3),
          new Event(OneDelayTrial.Change.LEVEL, -10));

  private Outcomes() {}

  /** Takes the first seed. */
  public static void main(String[] args) {
    long seed = Long.parseLong(args[0]);
    traps(seed);
    events(seed);
    FilteredOutcomes.read(
        seed, (name, read) -> tell(name, read.estimate(), told(read.estimate(), read.isWrong())));
    patterns(seed);
  }

  private static void traps(long seed) {
    DelayEstimator estimator = new DelayEstimator(0.1);
    for (Trap trap : Trap.values()) {
      for (int n = 0; n < EVENINGS; n++) {
        Scene.Evening evening = trap.on(seed + n);
        Estimate estimate = estimator.estimate(List.of(evening.reading()));
        boolean wrong =
            estimate instanceof Estimate.Found found
                && !found.measurement().ambiguous()
                && evening.belies(
                    found.measurement().delay().samples(),
                    found.measurement().uncertaintySamples());
        tell(trap + " " + n, estimate, told(estimate, wrong));
      }
    }
  }

  private static void events(long seed) {
    int n = 0;
    for (OneDelayTrial.Stimulus stimulus : OneDelayTrial.Stimulus.values()) {
      for (Event event : EVENTS) {
        int noise = NOISES[(int) ((seed + n) % NOISES.length)];
        OneDelayTrial.Told told =
            new OneDelayTrial(event.change, event.size, stimulus, noise, seed + n).read();
        System.out.printf(
            "%s %s, %s, %d\t%s\t%s%n",
            event.change, event.size, stimulus, noise, told.outcome(), told.codes());
        n++;
      }
    }
  }

  /** Two patterns of one kit of drum samples, and every second time the same pattern later. */
  private static void patterns(long seed) {
    DelayEstimator estimator = new DelayEstimator(0.2);
    SampleRate rate = new SampleRate(16_000);
    for (int n = 0; n < PATTERNS; n++) {
      SplittableRandom random = new SplittableRandom(seed + n);
      List<Signal> kit = ShowSound.drumKit(rate, random);
      Signal reference = ShowSound.pattern(kit, 1 + n % 2, random);
      boolean same = n % 4 < 2;
      Signal ret =
          same
              ? reference.slice(-PATTERNS, reference.length())
              : ShowSound.pattern(kit, 1 + n % 2, random);
      Estimate estimate = estimator.estimate(List.of(new Reading(reference, ret)));
      boolean wrong = !same && estimate instanceof Estimate.Found;
      tell("drums " + n, estimate, told(estimate, wrong));
    }
  }

  private static String told(Estimate estimate, boolean wrong) {
    String number = wrong ? "WRONG" : "QUIET";
    return estimate instanceof Estimate.Found ? number : "REFUSED";
  }

  private static void tell(String trial, Estimate estimate, String told) {
    String codes =
        estimate.findings().stream()
            .map(finding -> finding.code().label())
            .collect(Collectors.joining("+"));
    System.out.println(trial + "\t" + told + "\t" + codes + pure(estimate));
  }

  private static String pure(Estimate estimate) {
    return estimate instanceof Estimate.Found found && found.measurement().pure().isEmpty()
        ? "+no pure delay"
        : "";
  }
}
