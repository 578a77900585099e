package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** A gain that something rides is told, and a path that is merely noisy or reverberant is not. */
class GainModulationTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final int DELAY = 200;

  /** What is heard: words or music with quiet in between, or steady applause. */
  enum Sound {
    SPEECH(random -> ShowSound.speech(RATE, 6, random)),
    MUSIC(random -> ShowSound.music(RATE, 6, random)),
    APPLAUSE(random -> ShowSound.applause(RATE, 6, random));

    @SuppressWarnings("ImmutableEnumChecker") // holds no state
    private final Function<SplittableRandom, Signal> maker;

    Sound(Function<SplittableRandom, Signal> maker) {
      this.maker = maker;
    }

    /** The sound, softer and louder by 16 dB in turns of about a second. */
    double[] of(long seed) {
      double[] samples = maker.apply(new SplittableRandom(seed)).toArray();
      for (int i = 0; i < samples.length; i++) {
        double swell = Math.sin(2.9 * i / RATE.hertz());
        samples[i] *= 0.15 + 0.85 * swell * swell;
      }
      return samples;
    }
  }

  private static Estimate through(Sound sound, UnaryOperator<double[]> path, double noise) {
    double[] played = sound.of(4);
    double[] heard = path.apply(played);
    double[] ret = new double[heard.length + RATE.hertz()];
    SplittableRandom random = new SplittableRandom(8);
    for (int i = 0; i < ret.length; i++) {
      int from = i - DELAY;
      ret[i] = (from >= 0 && from < heard.length ? heard[from] : 0) + noise * random.nextGaussian();
    }
    return new DelayEstimator(0.25).estimate(Signal.of(RATE, played), Signal.of(RATE, ret));
  }

  private static List<FindingCode> codes(Estimate estimate) {
    return estimate.findings().stream().map(Finding::code).toList();
  }

  /** Gain that falls with the level within 10 ms and comes back within {@code release} seconds. */
  private static UnaryOperator<double[]> riding(double release, DoubleUnaryOperator gainAtLevel) {
    return samples -> {
      double[] out = new double[samples.length];
      double rms = Signal.of(RATE, samples).rms();
      double level = rms / 1000;
      for (int i = 0; i < samples.length; i++) {
        double now = Math.abs(samples[i]);
        level += (now - level) / ((now > level ? 0.01 : release) * RATE.hertz());
        out[i] = samples[i] * gainAtLevel.applyAsDouble(level / rms);
      }
      return out;
    };
  }

  @ParameterizedTest
  @EnumSource
  void tellsAutomaticLevelWithSlowRelease(Sound sound) {
    UnaryOperator<double[]> automatic =
        riding(0.4, level -> Math.pow(Math.max(1, level / 0.3), -0.75));
    Estimate estimate = through(sound, automatic, 1e-4);
    assertEquals(List.of(FindingCode.LEVEL_MOVES), codes(estimate), estimate::toString);
    Measurement m = assertInstanceOf(Estimate.Found.class, estimate).measurement();
    assertEquals(DELAY, m.delay().samples(), m.uncertaintySamples(), estimate::toString);
    assertTrue(estimate.findings().get(0).hint().contains("switch off automatic level"));
  }

  @ParameterizedTest
  @EnumSource(names = {"SPEECH", "MUSIC"})
  void tellsNoiseSuppressionThatShutsTheQuietParts(Sound sound) {
    UnaryOperator<double[]> gate = riding(0.05, level -> level > 0.5 ? 1 : 0.02);
    Estimate estimate = through(sound, gate, 1e-5);
    assertTrue(codes(estimate).contains(FindingCode.LEVEL_MOVES), estimate::toString);
  }

  /** Up and down by 2 dB in all, twice in three seconds. */
  @ParameterizedTest
  @EnumSource
  void tellsTwoDecibelsThatComeAndGo(Sound sound) {
    UnaryOperator<double[]> swell =
        samples -> {
          double[] out = samples.clone();
          for (int i = 0; i < out.length; i++) {
            out[i] *= Math.pow(10, Math.sin(4.0 * i / RATE.hertz()) / 20);
          }
          return out;
        };
    List<String> texts =
        through(sound, swell, 1e-4).findings().stream().map(Finding::text).toList();
    assertEquals(List.of("the path's level moves by about 2 dB while it plays"), texts);
  }

  private static GainModulation gains(double variance, IntToDoubleFunction gain) {
    double[] gains = new double[40];
    double[] variances = new double[gains.length];
    Arrays.setAll(gains, gain);
    Arrays.fill(variances, variance);
    return new GainModulation(gains, variances);
  }

  @Test
  void gainsThatScatterAsNoiseMakesThemStay() {
    SplittableRandom random = new SplittableRandom(5);
    for (int trial = 0; trial < 1000; trial++) {
      assertEquals(0, gains(0.01, i -> 1 + 0.1 * random.nextGaussian()).byDb());
    }
    assertEquals(0, new GainModulation(new double[0], new double[0]).byDb());
  }

  /** Of 40 gains off by d the logarithm of the odds is 20 (x - 1 - ln x), x = d^2 / variance. */
  @ParameterizedTest
  @CsvSource({"2.5, 0", "3.3, 3.2"})
  void gainsThatScatterBeyondDoubtMove(double x, double byDb) {
    double off = Math.sqrt(0.01 * x);
    assertEquals(byDb, gains(0.01, i -> i % 2 == 0 ? 1 + off : 1 - off).byDb(), 0.05);
  }

  @Test
  void oneStepIsNoMoreThanThat() {
    GainModulation step = gains(1e-4, i -> i < 25 ? 0.7 : 1.3);
    assertEquals(5.4, step.byDb(), 0.05);
    assertEquals(0, step.withoutStep().byDb());
    assertEquals(5.4, gains(1e-4, i -> i % 2 == 0 ? 0.7 : 1.3).withoutStep().byDb(), 1);
  }

  @ParameterizedTest
  @EnumSource
  void aSteadyPathHasNoSuchFinding(Sound sound) {
    assertEquals(List.of(), through(sound, samples -> samples, 1e-4).findings());
    assertEquals(List.of(), through(sound, samples -> samples, 0.03).findings());
  }

  /** A direct sound, and reflections that die away by 60 dB within a third of a second. */
  @ParameterizedTest
  @EnumSource
  void anOrdinaryRoomHasNoSuchFinding(Sound sound) {
    SplittableRandom random = new SplittableRandom(6);
    double[] room = new double[RATE.hertz() / 3];
    room[0] = 1;
    for (int i = 80; i < room.length; i += 1 + random.nextInt(8)) {
      room[i] = 0.12 * random.nextGaussian() * Math.exp(-6.9 * i / room.length);
    }
    Estimate estimate = through(sound, samples -> convolved(samples, room), 1e-4);
    assertInstanceOf(Estimate.Found.class, estimate, estimate::toString);
    assertEquals(List.of(), codes(estimate), estimate::toString);
  }

  private static double[] convolved(double[] samples, double[] response) {
    double[] out = new double[samples.length];
    for (int k = 0; k < response.length; k++) {
      for (int i = k; response[k] != 0 && i < out.length; i++) {
        out[i] += response[k] * samples[i - k];
      }
    }
    return out;
  }
}
