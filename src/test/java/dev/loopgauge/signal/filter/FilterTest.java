package dev.loopgauge.signal.filter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class FilterTest {
  private static final double[] HERTZ = {40, 150, 317, 500, 1000, 2900, 7000, 15_000};

  static List<Design> designs() {
    return Designs.all();
  }

  /** Expected: the filter's own impulse response, transformed term by term. */
  @ParameterizedTest
  @MethodSource("designs")
  void responseAndSlopeAreThoseOfTheImpulseResponse(Design design) {
    Filter filter = design.at(Designs.RATE);
    double[] impulse = new double[48_000];
    impulse[0] = 1;
    double[] answer = filter.on(impulse);
    for (double hertz : HERTZ) {
      double cycles = hertz / 48_000;
      Complex sum = Complex.ZERO;
      Complex moment = Complex.ZERO;
      for (int n = 0; n < answer.length; n++) {
        Complex term = Complex.oneSample(n * cycles).times(answer[n]);
        sum = sum.plus(term);
        moment = moment.plus(term.times(n));
      }
      assertNear(sum, filter.response(cycles), 1e-9, design + " at " + hertz);
      assertNear(moment, filter.slope(cycles), 1e-6, design + " at " + hertz);
    }
  }

  /** Expected: the difference of the phase over 0.002 Hz. */
  @ParameterizedTest
  @MethodSource("designs")
  void groupDelayIsTheFallOfThePhase(Design design) {
    for (double hertz : HERTZ) {
      double step = 0.001;
      Complex turn =
          Designs.response(design, hertz + step).over(Designs.response(design, hertz - step));
      double expected = -turn.phase() / (2 * Math.PI * 2 * step / 48_000);
      assertEquals(expected, Designs.groupDelay(design, hertz), 1e-2, design + " at " + hertz);
    }
  }

  @ParameterizedTest
  @MethodSource("designs")
  void nothingComesBeforeTheSound(Design design) {
    double[] sound = new double[64];
    sound[20] = 0.5;
    double[] after = design.at(Designs.RATE).on(sound);
    for (int i = 0; i < 20; i++) {
      assertEquals(0, after[i], design.toString());
    }
    assertEquals(0.5, sound[20], "the input was changed by " + design);
    assertEquals(64, after.length);
  }

  /** Expected: worked out by hand. */
  @Test
  void aBiquadFollowsItsDifferenceEquation() {
    Biquad biquad = new Biquad(1, 2, 3, -0.5, 0.25);
    assertArrayEquals(
        new double[] {1, 2.5, 4, 1.375, -0.3125}, biquad.on(new double[] {1, 0, 0, 0, 0}), 1e-12);
  }

  private static void assertNear(Complex expected, Complex actual, double delta, String what) {
    assertEquals(0, expected.minus(actual).magnitude(), delta, what);
  }
}
