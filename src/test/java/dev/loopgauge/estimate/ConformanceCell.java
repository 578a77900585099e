package dev.loopgauge.estimate;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.LongStream;

/**
 * Trials of one stimulus at one rate in white noise of one level.
 *
 * @param campaign gives the seeds, and remembers what was run
 * @param stimulus the name of a stimulus kind, or {@value #SPEECH} or {@value #MUSIC} for a
 *     recorded reference
 * @param rateHz the rate
 * @param snrDb the signal-to-noise ratio of each sample, in dB
 * @param seconds how long the stimulus is
 * @param trials how many
 */
record ConformanceCell(
    Campaign campaign, String stimulus, int rateHz, double snrDb, double seconds, int trials) {
  static final String SPEECH = "speech";
  static final String MUSIC = "music";

  private static final Tally.Promise PROMISE = new Tally.Promise(1.1, 0.01);

  /** Deep in noise some can't be told from chance, and are refused. */
  private static final Tally.Promise DEEP = new Tally.Promise(1.25, 0.1);

  /** One trial's outcome, the truth, and the bound of its error. */
  private record Outcome(Estimate estimate, double delay, double bound) {}

  /**
   * Runs the trials: random delays, levels from -40 to +20 dB, either polarity. Empty where the
   * run's time is up.
   */
  Optional<Tally> run() {
    return campaign
        .slice(name(), () -> tried().figures())
        .map(figures -> Tally.read(name(), figures));
  }

  private Tally tried() {
    DelayTrial trial = new DelayTrial(reference());
    DelayEstimator estimator = new DelayEstimator(seconds / 4);
    Tally tally = new Tally(name());
    seeds().mapToObj(seed -> outcome(trial, estimator, seed)).toList().stream()
        .forEach(o -> tally.add(o.estimate(), o.delay(), o.bound()));
    return tally;
  }

  private Outcome outcome(DelayTrial trial, DelayEstimator estimator, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double delay = delay(random);
    double gain = Math.pow(10, 3 * random.nextDouble() - 2) * (random.nextBoolean() ? 1 : -1);
    double noise = trial.noise(snrDb, gain);
    Reading reading = trial.reading(delay, gain, noise, random);
    Estimate estimate = estimator.estimate(List.of(reading));
    return new Outcome(estimate, delay, trial.bound(noise, gain));
  }

  private double delay(SplittableRandom random) {
    return rateHz * seconds * (0.02 + 0.2 * random.nextDouble());
  }

  /**
   * In how many trials the strongest value stands on the right peak, refused or not: on the
   * reference's own, above half of its height. Empty where the run's time is up.
   */
  OptionalInt detected() {
    return campaign
        .slice(name() + ", peak", () -> List.of("" + countDetected()))
        .map(figures -> OptionalInt.of(Integer.parseInt(figures.get(0))))
        .orElse(OptionalInt.empty());
  }

  private long countDetected() {
    DelayTrial trial = new DelayTrial(reference());
    return seeds().filter(seed -> isDetected(trial, seed)).count();
  }

  private boolean isDetected(DelayTrial trial, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double delay = delay(random);
    double noise = trial.noise(snrDb, 1);
    Reading reading = trial.reading(delay, 1, noise, random);
    Spectra spectra = Spectra.of(List.of(reading), seconds / 4);
    CrossSpectrum own = spectra.auto();
    return own.at(spectra.strongest().lag() - delay).value() > own.at(0).value() / 2;
  }

  /** What the estimator promises for such trials. */
  Tally.Promise promise() {
    return snrDb < -20 ? DEEP : PROMISE;
  }

  /** The larger groups that the cell's trials count in. */
  List<String> pools() {
    return List.of(
        "all of " + stimulus,
        String.format(Locale.ROOT, "all at %.1f kHz", rateHz / 1000.0),
        String.format(Locale.ROOT, "all at %+.0f dB", snrDb));
  }

  private String name() {
    return String.format(Locale.ROOT, "%s, %.1f kHz, %+.0f dB", stimulus, rateHz / 1000.0, snrDb);
  }

  private LongStream seeds() {
    long first = stimulus.hashCode() * 1_000_003L + rateHz * 101L + (long) snrDb;
    return LongStream.range(0, trials).map(i -> campaign.seed(first * 1_000_003L + i)).parallel();
  }

  private Signal reference() {
    SampleRate rate = new SampleRate(rateHz);
    return switch (stimulus) {
      case SPEECH -> ShowSound.speech(rate, seconds, new SplittableRandom(3));
      case MUSIC -> ShowSound.music(rate, seconds, new SplittableRandom(3));
      default ->
          DelayTrial.asConvertersPass(
              StimulusKind.valueOf(stimulus.toUpperCase(Locale.ROOT)).of(seconds).render(rate));
    };
  }
}
