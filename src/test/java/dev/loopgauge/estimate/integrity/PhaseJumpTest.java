package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.stats.Odds;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sound that is cut and joined within a sweep jumps; what filters make of a sweep bends. */
class PhaseJumpTest {
  private static final SampleRate RATE = Designs.RATE;
  private static final int DELAY = 300;
  private static final int TAIL = 12_000;
  private static final double[] NOISES = {1e-5, 1e-3, 1e-1};

  /** Each sample of the return is one of the sweep. */
  private static double[] heard(Signal sweep, IntUnaryOperator which) {
    double[] heard = new double[sweep.length() + TAIL];
    for (int i = 0; i < heard.length; i++) {
      int n = which.applyAsInt(i);
      heard[i] = n >= 0 && n < sweep.length() ? sweep.at(n) : 0;
    }
    return heard;
  }

  private static Reading noisy(Signal sweep, double[] heard, double noise, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] ret = heard.clone();
    for (int i = 0; i < ret.length; i++) {
      ret[i] += noise * random.nextGaussian();
    }
    return new Reading(sweep, Signal.of(RATE, ret));
  }

  private static double odds(Reading reading, Sides sides) {
    return PhaseJump.likeliest(reading, sides, false).map(PhaseJump::odds).orElse(0.0);
  }

  /** Of 1,656 such returns, of 0.25 to 5 s and with noise of 1e-6 to 0.3, none came to 5. */
  @Tag("campaign")
  @ParameterizedTest
  @ValueSource(doubles = {0.25, 1, 3})
  void noFilterMakesASweepJump(double seconds) {
    Signal sweep = ExponentialSweep.fullBand(seconds).render(RATE);
    double[] sent = heard(sweep, i -> i - DELAY);
    int seeds = Campaign.fullOrSmall(10, 1);
    for (Design design : Designs.all()) {
      double[] heard = design.at(RATE).on(sent);
      for (int n = 0; n < NOISES.length * seeds; n++) {
        Reading reading = noisy(sweep, heard, NOISES[n % NOISES.length], n);
        double odds = odds(reading, new Sides(DELAY, DELAY));
        assertTrue(odds < Odds.BEYOND_DOUBT / 2, design + ", " + n + ": " + odds);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.25, 1",
    "0.5, -1",
    "0.75, 1",
    "0.3, -4",
    "0.6, 16",
    "0.9, 64",
    "0.5, -256",
    "0.75, 512",
  })
  void aBlockThatIsLostOrPutInJumpsWhereItIs(double part, int later) {
    Signal sweep = ExponentialSweep.fullBand(1).render(RATE);
    int cut = (int) (part * sweep.length());
    double[] heard = heard(sweep, i -> i - DELAY - (i - DELAY >= cut ? later : 0));
    for (double noise : new double[] {1e-5, 1e-4, 1e-3}) {
      Reading reading = noisy(sweep, heard, noise, 1);
      Optional<PhaseJump> jump = PhaseJump.of(reading, new Sides(DELAY, DELAY + later));
      assertTrue(jump.isPresent(), "noise " + noise);
      assertEquals(DELAY + cut, jump.get().at(), 24, "noise " + noise);
    }
  }

  /** Where the delays of both sides are taken for one, a step of a sample jumps all the same. */
  @Test
  void aSampleThatIsLostNeedsNoSecondDelay() {
    Signal sweep = ExponentialSweep.fullBand(1).render(RATE);
    int cut = sweep.length() / 2;
    double[] heard = heard(sweep, i -> i - DELAY + (i - DELAY >= cut ? 1 : 0));
    Optional<PhaseJump> jump = PhaseJump.of(noisy(sweep, heard, 1e-3, 1), new Sides(DELAY, DELAY));
    assertEquals(DELAY + cut, jump.orElseThrow().at(), 24);
  }

  /** A fader that is moved at once: the level jumps, and the phase doesn't. */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.7, 1.4, 2})
  void aLevelThatJumpsIsNoCut(double gain) {
    Signal sweep = ExponentialSweep.fullBand(1).render(RATE);
    double[] heard = heard(sweep, i -> i - DELAY);
    for (int i = heard.length / 3; i < heard.length; i++) {
      heard[i] *= gain;
    }
    Reading reading = noisy(sweep, heard, 1e-4, 1);
    assertEquals(Optional.empty(), PhaseJump.of(reading, new Sides(DELAY, DELAY)));
  }

  @Test
  void aSweepOfAFewMillisecondsTellsNothing() {
    Signal sweep = ExponentialSweep.fullBand(1).render(RATE).slice(0, 150);
    Reading reading = noisy(sweep, heard(sweep, i -> i), 1e-4, 1);
    assertEquals(Optional.empty(), PhaseJump.of(reading, new Sides(0, 0)));
    assertEquals(Optional.empty(), PhaseJump.of(reading, new Sides(0, 4000)));
  }
}
