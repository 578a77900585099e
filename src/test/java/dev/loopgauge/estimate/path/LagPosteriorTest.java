package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayTrial;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LagPosteriorTest {
  private static final Signal SWEEP = StimulusKind.SWEEP.of(0.25).render(new SampleRate(48_000));

  private final CrossSpectrum own = correlationWithItself();

  private static CrossSpectrum correlationWithItself() {
    DelayTrial trial = new DelayTrial(DelayTrial.asConvertersPass(SWEEP));
    Reading silent = trial.reading(100, 1, 0, new SplittableRandom(1));
    return Spectra.of(List.of(silent), 0.05).auto();
  }

  /** The variance of the values with which the peak stands out this many times. */
  private double variance(double timesOut) {
    return Math.pow(own.at(0).value() / timesOut, 2);
  }

  private double spreadByCurvature(double timesOut) {
    return 1 / timesOut / Math.sqrt(-own.at(0).curvature() / own.at(0).value());
  }

  private double spread(double timesOut) {
    return LagPosterior.spread(own, own.at(0), variance(timesOut), spreadByCurvature(timesOut));
  }

  @Test
  void isWhatTheCurvatureSaysFarAboveTheNoise() {
    assertEquals(1, spread(100) / spreadByCurvature(100), 0.01);
  }

  @Test
  void isWiderNearTheNoiseWhereAPeakFallsOffByAPartOnly() {
    assertTrue(spread(4) > 1.5 * spreadByCurvature(4), () -> "" + spread(4) / spreadByCurvature(4));
  }

  /** Integrated in finer steps and further out it is the same. */
  @Test
  void countsAllThatMatters() {
    double variance = variance(7);
    double weights = 0;
    double moment = 0;
    for (double lag = -200; lag <= 200; lag += 0.05) {
      double value = own.at(lag).value();
      double lost = Math.pow(own.at(0).value(), 2) - value * value;
      double weight = value > 0 ? Math.exp(-lost / (2 * variance)) : 0;
      weights += weight;
      moment += weight * lag * lag;
    }
    assertEquals(1, spread(7) / Math.sqrt(moment / weights), 0.05);
  }
}
