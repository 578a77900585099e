package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.Complex;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;
import dev.loopgauge.signal.filter.Peak;
import dev.loopgauge.signal.filter.Shelf;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MinimumPhaseShareTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int DELAY = 300;
  private static final int HALF = 1 << 15;

  static Stream<Design> minimumPhaseFilters() {
    return Stream.of(
        new HighPass(300, 1), new HighPass(300, 4), new LowPass(8000, 3), new Peak(1000, 6, 2));
  }

  /** Of filters that hold back no more than is reckoned with, 30 dB. */
  static Stream<Design> gentleFilters() {
    return Stream.of(
        new HighPass(100, 1),
        new Peak(1000, 6, 2),
        new Peak(3000, -12, 0.7),
        new Shelf(Shelf.Side.LOW, 200, -6));
  }

  @ParameterizedTest
  @MethodSource("gentleFilters")
  void aFiltersPhaseFollowsFromItsMagnitude(Design design) {
    double[] powers = new double[HALF + 1];
    for (int k = 0; k <= HALF; k++) {
      double magnitude = design.at(RATE).response(k / 2.0 / HALF).magnitude();
      powers[k] = magnitude * magnitude;
    }
    double[] filter = MinimumPhaseShare.filter(powers);
    for (int hertz = 600; hertz <= 6000; hertz += 300) {
      int k = hertz * 2 * HALF / RATE.hertz();
      Complex due = design.at(RATE).response(k / 2.0 / HALF);
      assertEquals(due.re(), filter[2 * k], 0.02, hertz + " Hz");
      assertEquals(due.im(), filter[2 * k + 1], 0.02, hertz + " Hz");
    }
  }

  private static double share(Signal sent, double[] back) {
    Spectra spectra = Spectra.of(List.of(new Reading(sent, Signal.of(RATE, back))), 0.1);
    return MinimumPhaseShare.of(spectra, Fit.of(spectra, List.of(spectra.strongest())));
  }

  private static double through(Design design, Signal sent) {
    double[] late = sent.slice(-DELAY, sent.length()).toArray();
    return share(sent, design.at(RATE).on(late));
  }

  private static Signal music() {
    return ShowSound.music(RATE, 1, new SplittableRandom(5));
  }

  @ParameterizedTest
  @MethodSource("minimumPhaseFilters")
  void musicThroughAFilterIsNearlyAllOfWhatComesBack(Design design) {
    assertTrue(through(design, music()) > 0.75, design.toString());
  }

  /** Its phase belongs to no magnitude. */
  @Test
  void anAllPassKeepsItsPhase() {
    assertTrue(through(new AllPass(300, 2), music()) < 0.6);
  }

  @Test
  void anotherSweepIsNone() {
    Signal sent = ExponentialSweep.fullBand(1).render(RATE);
    double[] other = ExponentialSweep.fullBand(0.8).render(RATE).toArray();
    assertTrue(share(sent, other) < 0.2);
  }
}
