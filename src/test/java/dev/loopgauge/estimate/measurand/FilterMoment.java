package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.result.Passband;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.filter.Complex;
import dev.loopgauge.signal.filter.Filter;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * When a filter's own response is strongest within a band, and how far its group delays spread
 * there, from its coefficients alone.
 *
 * @param samples when: where the envelope |integral of H(w) e^(jwt) dw| is largest, the band's ends
 *     fading over half an octave
 * @param spread from the least to the largest group delay in the part of the band that passes no
 *     less than 10 dB below the most, in samples
 */
record FilterMoment(double samples, double spread) {
  private static final int FREQUENCIES = 1000;
  private static final double HALF_OCTAVE = Math.log(2) / 2;

  /** Of one over the bandwidth. */
  private static final double STEP = 0.2;

  /** Steps beyond the group delays. */
  private static final double AROUND = 20;

  private static final double FINEST = 1e-6;
  private static final double PASSES = Math.sqrt(0.1);

  /** The moment within a band that was heard. */
  static FilterMoment of(Filter filter, Passband heard, SampleRate rate) {
    double low = Math.log(heard.fromHz() / rate.hertz());
    double high = Math.log(heard.toHz() / rate.hertz());
    double edge = Math.min(HALF_OCTAVE, (high - low) / 2);
    double[] omegas = new double[FREQUENCIES];
    Complex[] responses = new Complex[FREQUENCIES];
    double[] weights = new double[FREQUENCIES];
    for (int i = 0; i < FREQUENCIES; i++) {
      double at = low + (high - low) * (i + 0.5) / FREQUENCIES;
      double inside = Math.min(1, Math.min(at - low, high - at) / edge);
      omegas[i] = 2 * Math.PI * Math.exp(at);
      weights[i] = (0.5 - 0.5 * Math.cos(Math.PI * inside)) * omegas[i];
      responses[i] = filter.response(Math.exp(at));
    }
    double most = Arrays.stream(responses).mapToDouble(Complex::magnitude).max().orElseThrow();
    DoubleSummaryStatistics passed =
        IntStream.range(0, FREQUENCIES)
            .filter(i -> responses[i].magnitude() >= PASSES * most)
            .mapToDouble(i -> filter.groupDelay(omegas[i] / (2 * Math.PI)))
            .summaryStatistics();
    double step = STEP * 2 * Math.PI / (omegas[FREQUENCIES - 1] - omegas[0]);
    double samples =
        strongest(
            t -> power(omegas, responses, weights, t),
            passed.getMin() - AROUND * step,
            passed.getMax() + AROUND * step,
            step);
    return new FilterMoment(samples, passed.getMax() - passed.getMin());
  }

  private static double strongest(DoubleUnaryOperator power, double from, double to, double step) {
    double best = from;
    for (double t = from; t <= to; t += step) {
      best = power.applyAsDouble(t) > power.applyAsDouble(best) ? t : best;
    }
    for (double fine = step; fine > FINEST; fine /= 2) {
      double late = power.applyAsDouble(best + fine) - power.applyAsDouble(best - fine);
      double next = best + Math.copySign(fine, late);
      best = power.applyAsDouble(next) > power.applyAsDouble(best) ? next : best;
    }
    return best;
  }

  private static double power(double[] omegas, Complex[] responses, double[] weights, double t) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < omegas.length; i++) {
      double size = weights[i] * responses[i].magnitude();
      double phase = responses[i].phase() + omegas[i] * t;
      re += size * Math.cos(phase);
      im += size * Math.sin(phase);
    }
    return re * re + im * im;
  }
}
