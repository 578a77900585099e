package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Trials of one stimulus at one rate in white noise of one level.
 *
 * @param stimulus the name of a stimulus kind, or {@value #SPEECH} or {@value #MUSIC} for a
 *     recorded reference
 * @param rateHz the rate
 * @param snrDb the signal-to-noise ratio of each sample, in dB
 * @param seconds how long the stimulus is
 * @param trials how many
 */
record ConformanceCell(String stimulus, int rateHz, double snrDb, double seconds, int trials) {
  static final String SPEECH = "speech";
  static final String MUSIC = "music";

  /** What the errors' root mean square may be, in bounds, and what it may be deep in noise. */
  static final double MOST_RMS = 1.1;

  private static final double MOST_RMS_DEEP = 1.25;

  /** Runs the trials: random delays, levels from -40 to +20 dB, either polarity. */
  Tally run() {
    DelayTrial trial = new DelayTrial(reference());
    Tally tally = new Tally(name());
    SplittableRandom random = new SplittableRandom(seed());
    DelayEstimator estimator = new DelayEstimator(seconds / 4);
    for (int i = 0; i < trials; i++) {
      double delay = rateHz * seconds * (0.02 + 0.2 * random.nextDouble());
      double gain = Math.pow(10, 3 * random.nextDouble() - 2) * (random.nextBoolean() ? 1 : -1);
      double noise = trial.noise(snrDb, gain);
      Reading reading = trial.reading(delay, gain, noise, random);
      tally.add(estimator.estimate(List.of(reading)), delay, trial.bound(noise, gain));
    }
    return tally;
  }

  /** In how many trials the strongest peak is the right one, refused or not. */
  int detected() {
    DelayTrial trial = new DelayTrial(reference());
    SplittableRandom random = new SplittableRandom(seed());
    int right = 0;
    for (int i = 0; i < trials; i++) {
      double delay = rateHz * seconds * (0.02 + 0.2 * random.nextDouble());
      double noise = trial.noise(snrDb, 1);
      Reading reading = trial.reading(delay, 1, noise, random);
      Spectra spectra = Spectra.of(List.of(reading), seconds / 4);
      double off = spectra.strongest(spectra.cross()).lag() - delay;
      right += Math.abs(off) < 4 * trial.bound(noise, 1) + 0.5 ? 1 : 0;
    }
    return right;
  }

  /** What the errors' root mean square may be, in bounds. */
  double mostRms() {
    return snrDb < -20 ? MOST_RMS_DEEP : MOST_RMS;
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

  private long seed() {
    return stimulus.hashCode() * 1_000_003L + rateHz * 101L + (long) snrDb;
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
