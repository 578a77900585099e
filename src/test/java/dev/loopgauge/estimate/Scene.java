package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;

/** What can be heard on one evening, all of it from one seed. */
final class Scene {
  private static final int[] RATES = {8_000, 8_000, 16_000, 16_000, 48_000};

  private final SplittableRandom random;
  private final SampleRate rate;
  private final double seconds;

  /** The scene of a seed, of up to a second. */
  Scene(long seed) {
    this.random = new SplittableRandom(seed);
    this.rate = new SampleRate(RATES[random.nextInt(RATES.length)]);
    this.seconds = 0.25 + 0.75 * random.nextDouble();
  }

  /** The scene of a seed, of some length. */
  Scene(long seed, double seconds) {
    this.random = new SplittableRandom(seed);
    this.rate = new SampleRate(RATES[random.nextInt(RATES.length)]);
    this.seconds = seconds;
  }

  /**
   * A reading, and the delay it holds if any.
   *
   * @param delay the true delay in samples; empty where the return holds nothing of the reference
   */
  record Evening(Reading reading, OptionalDouble delay) {
    /** An honest k = 2 is passed by one in twenty, and this many times it by one in two million. */
    private static final double SURELY_OFF = 2.5;

    /** Whether a delay of so much uncertainty is false: of nothing, or off by more than it says. */
    boolean belies(double samples, double uncertainty) {
      return delay.isEmpty() || Math.abs(samples - delay.getAsDouble()) > SURELY_OFF * uncertainty;
    }
  }

  /** Two sounds that have nothing to do with each other. */
  Evening strangers(Signal reference, Signal ret) {
    return new Evening(new Reading(reference, ret.times(gain())), OptionalDouble.empty());
  }

  /** A sound and itself, later, among other sound. */
  Evening later(Signal reference, Signal among) {
    int delay = random.nextInt(rate.samplesIn(0.09));
    Signal late = reference.slice(-delay, reference.length());
    return new Evening(
        new Reading(reference, plus(late, among.times(gain()))), OptionalDouble.of(delay));
  }

  SplittableRandom random() {
    return random;
  }

  SampleRate rate() {
    return rate;
  }

  /** How many samples the scene lasts. */
  int length() {
    return rate.samplesIn(seconds);
  }

  private double gain() {
    return Math.pow(10, -2 * random.nextDouble());
  }

  Signal stimulus() {
    StimulusKind[] kinds = StimulusKind.values();
    return kinds[random.nextInt(kinds.length)].of(seconds).render(rate);
  }

  Signal click() {
    return StimulusKind.CLICK.of(seconds).render(rate);
  }

  Signal sweepOfAnotherLength() {
    return ExponentialSweep.fullBand(seconds * (0.8 + 0.15 * random.nextDouble())).render(rate);
  }

  Signal speech() {
    return ShowSound.speech(rate, seconds, random);
  }

  Signal music() {
    return ShowSound.music(rate, seconds, random);
  }

  Signal applause() {
    return ShowSound.applause(rate, seconds, random);
  }

  /** What a subwoofer is sent of a sound, with a converter's noise. */
  Signal bass(Signal sound) {
    double follow = 1 - Math.exp(-2 * Math.PI * 100 / rate.hertz());
    double[] low = sound.toArray();
    for (int order = 0; order < 4; order++) {
      double before = 0;
      for (int i = 0; i < low.length; i++) {
        before += follow * (low[i] - before);
        low[i] = before;
      }
    }
    return plus(Signal.of(rate, low), noise().times(1e-4));
  }

  /** Any programme. */
  Signal programme() {
    return switch (random.nextInt(3)) {
      case 0 -> speech();
      case 1 -> music();
      default -> applause();
    };
  }

  /** A stimulus or any programme. */
  Signal anything() {
    return switch (random.nextInt(4)) {
      case 0 -> speech();
      case 1 -> music();
      case 2 -> applause();
      default -> stimulus();
    };
  }

  Signal noise() {
    return samples(i -> 0.1 * random.nextGaussian());
  }

  /** Mains hum of 50 or 60 Hz with a dozen harmonics. */
  Signal hum() {
    return mains(random.nextBoolean() ? 50 : 60, 1);
  }

  /** Strong hum of one mains, as one channel picks it up. */
  Signal mains(double gain) {
    return mains(50, gain);
  }

  private Signal mains(double hertz, double gain) {
    double[] levels = random.doubles(12, 0, 0.1).toArray();
    double[] phases = random.doubles(12, 0, 2 * Math.PI).toArray();
    return samples(
        i -> {
          double sum = 0;
          for (int h = 0; h < levels.length; h++) {
            sum +=
                levels[h] * Math.sin(phases[h] + 2 * Math.PI * hertz * (h + 1) * i / rate.hertz());
          }
          return gain * sum;
        });
  }

  Signal tone() {
    double hertz = 40 * Math.pow(80, random.nextDouble());
    return samples(i -> 0.3 * Math.sin(2 * Math.PI * hertz * i / rate.hertz()));
  }

  Signal constant(double level) {
    return samples(i -> level);
  }

  /** A sound that starts over again and again. */
  Signal looped(Signal bar) {
    return samples(i -> bar.at(i % bar.length()));
  }

  Signal reversed(Signal signal) {
    return samples(i -> signal.at(Math.max(0, signal.length() - 1 - i)));
  }

  /** A sound driven so hard that only its sign is left. */
  Evening square(Signal signal) {
    Evening evening = later(signal, noise().times(1e-3));
    Signal ret = evening.reading().ret().slice(0, signal.length());
    double[] square = ret.toArray();
    for (int i = 0; i < square.length; i++) {
      square[i] = Math.signum(square[i]) * 0.9;
    }
    return new Evening(new Reading(signal, Signal.of(rate, square)), evening.delay());
  }

  Signal plus(Signal one, Signal other) {
    return samples(i -> at(one, i) + at(other, i));
  }

  private static double at(Signal signal, int index) {
    return index < signal.length() ? signal.at(index) : 0;
  }

  private Signal samples(IntToDoubleFunction of) {
    double[] samples = new double[length()];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = of.applyAsDouble(i);
    }
    return Signal.of(rate, samples);
  }
}
