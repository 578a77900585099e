package dev.loopgauge.estimate.measurand;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.Filter;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A return through a filter after a whole delay, in white noise.
 *
 * @param filter what the path does besides; empty for nothing
 * @param stimulus what is played
 * @param delay the pure delay before the filter, in samples
 * @param signalToNoiseDb the return's mean power while it sounds, against the noise's
 * @param seed of the noise and of what stimulus is random
 */
record FilteredTrial(
    Optional<Filter> filter, Kind stimulus, int delay, double signalToNoiseDb, long seed) {
  static final SampleRate RATE = Designs.RATE;
  private static final int TAIL = 12_000;

  enum Kind {
    SWEEP,
    WHITE,
    PINK,
    CLICK,
    MLS,
    SPEECH,
    MUSIC,
    SONGS,
    WORDS;

    private static final List<Kind> MADE = List.of(SWEEP, WHITE, PINK, CLICK, MLS, SPEECH, MUSIC);

    /** Those that are made here, of nothing that others recorded. */
    static List<Kind> made() {
      return MADE;
    }

    /** In full all that are there; in small those that need no programme. */
    static List<Kind> tried() {
      List<Kind> inFull = RecordedSound.areThere() ? List.of(values()) : MADE;
      return inFull.subList(0, Campaign.fullOrSmall(inFull.size(), inFull.indexOf(CLICK) + 1));
    }
  }

  Reading reading() {
    SplittableRandom random = new SplittableRandom(seed);
    double[] sent = sent(random);
    double[] late = new double[sent.length + delay + TAIL];
    System.arraycopy(sent, 0, late, delay, sent.length);
    double[] back = filter.isPresent() ? filter.get().on(late) : late;
    double energy = 0;
    for (double value : back) {
      energy += value * value;
    }
    double length = stimulus == Kind.CLICK ? 200 : sent.length;
    double noise = Math.sqrt(energy / length) * Math.pow(10, -signalToNoiseDb / 20);
    for (int i = 0; i < back.length; i++) {
      back[i] += noise * random.nextGaussian();
    }
    return new Reading(Signal.of(RATE, sent), Signal.of(RATE, back));
  }

  private double[] sent(SplittableRandom random) {
    return switch (stimulus) {
      case SWEEP -> ExponentialSweep.fullBand(1).render(RATE).toArray();
      case MLS -> StimulusKind.MLS.of(1).render(RATE).toArray();
      case SPEECH -> ShowSound.speech(RATE, 1, random).toArray();
      case MUSIC -> ShowSound.music(RATE, 1, random).toArray();
      case SONGS -> RecordedSound.SONGS.second(RATE, random);
      case WORDS -> RecordedSound.WORDS.second(RATE, random);
      case WHITE -> white(random, RATE.hertz());
      case PINK -> pink(white(random, RATE.hertz()));
      case CLICK -> {
        double[] click = new double[2000];
        click[0] = 0.5;
        yield click;
      }
    };
  }

  private static double[] white(SplittableRandom random, int length) {
    double[] noise = new double[length];
    for (int i = 0; i < length; i++) {
      noise[i] = 0.1 * random.nextGaussian();
    }
    return noise;
  }

  /** Falls by about 3 dB an octave: three first-order filters a decade and a half apart. */
  private static double[] pink(double[] white) {
    double[] poles = {0.9985, 0.97, 0.6};
    double[] gains = {0.08, 0.25, 0.7};
    double[] pink = new double[white.length];
    for (int p = 0; p < poles.length; p++) {
      double state = 0;
      for (int i = 0; i < white.length; i++) {
        state = poles[p] * state + gains[p] * white[i];
        pink[i] += state;
      }
    }
    return pink;
  }
}
