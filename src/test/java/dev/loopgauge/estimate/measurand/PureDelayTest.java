package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.BandPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.Filter;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;
import dev.loopgauge.signal.filter.Peak;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is told of the pure delay where only a part of a filter is heard. */
class PureDelayTest {
  private static final int DELAY = 310;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  private static Measurement measured(
      Optional<Design> design, FilteredTrial.Kind kind, double decibels, long seed) {
    Estimate estimate =
        ESTIMATOR.estimate(
            List.of(
                new FilteredTrial(design.map(d -> d.at(Designs.RATE)), kind, DELAY, decibels, seed)
                    .reading()));
    return ((Estimate.Found) estimate).measurement();
  }

  private static void assertHolds(Measurement measured) {
    PureDelay pure = measured.pure().orElseThrow();
    assertEquals(DELAY, pure.samples(), pure.uncertaintySamples());
  }

  /** Speech at 10 dB is heard up to some 5 kHz, where a low-pass of 8 kHz hardly shows yet. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void holdsWhatALowPassAboveTheHeardBandAdds(int order) {
    for (long seed = 0; seed < 3; seed++) {
      Measurement measured =
          measured(Optional.of(new LowPass(8000, order)), FilteredTrial.Kind.SPEECH, 10, seed);
      measured.pure().ifPresent(pure -> assertHolds(measured));
    }
  }

  @Test
  void isTheDelayItselfOnAFlatPath() {
    for (long seed = 0; seed < 3; seed++) {
      Measurement measured = measured(Optional.empty(), FilteredTrial.Kind.SPEECH, 10, seed);
      assertEquals(
          measured.uncertaintySamples(), measured.pure().orElseThrow().uncertaintySamples());
      assertTrue(measured.uncertaintySamples() < 0.05, measured.toString());
    }
  }

  static Stream<Design> turning() {
    return Stream.of(
        new AllPass(1000, 1), new AllPass(1000, 2), new Crossover(500, 4, Crossover.Output.SUM));
  }

  /** Where phases turn inside the heard band, the number of turns isn't guessed. */
  @ParameterizedTest
  @MethodSource("turning")
  void isNotToldWrongOfPhasesThatTurn(Design design) {
    for (double decibels : new double[] {60, 30, 10}) {
      Measurement measured = measured(Optional.of(design), FilteredTrial.Kind.CLICK, decibels, 1);
      measured.pure().ifPresent(pure -> assertHolds(measured));
    }
  }

  /** A sweep's own peak lies in the ring of such an all-pass; it was once "a second arrival". */
  @Test
  void takesTheRingOfAnAllPassForNoSecondArrival() {
    for (double decibels : new double[] {60, 30, 10}) {
      Measurement measured =
          measured(Optional.of(new AllPass(1000, 2)), FilteredTrial.Kind.SWEEP, decibels, 1);
      assertEquals(1, measured.arrivals().size(), measured.toString());
      assertEquals(DELAY + 0.56, measured.delay().samples(), 0.2);
    }
  }

  static Stream<Design> ofEachKind() {
    return Stream.of(
        new HighPass(300, 2),
        new LowPass(8000, 4),
        new Crossover(500, 4, Crossover.Output.LOW),
        new Peak(3000, -12, 0.7),
        new AllPass(1000, 2),
        BandPass.TELEPHONE);
  }

  @ParameterizedTest
  @MethodSource("ofEachKind")
  void movesByWhatIsPutBeforeAFilterAsTheDelayDoes(Design design) {
    Filter filter = design.at(Designs.RATE);
    Measurement alone = measured(filter, 0);
    for (int more : new int[] {1, 577, 2000}) {
      Measurement late = measured(filter, more);
      assertEquals(more, late.delay().samples() - alone.delay().samples(), 0.05);
      assertEquals(
          more, late.pure().orElseThrow().samples() - alone.pure().orElseThrow().samples(), 0.05);
    }
  }

  /** So far above the noise that only arithmetic is left. */
  private static Measurement measured(Filter filter, int delay) {
    FilteredTrial trial =
        new FilteredTrial(Optional.of(filter), FilteredTrial.Kind.WHITE, delay, 100, 1);
    return ((Estimate.Found) ESTIMATOR.estimate(List.of(trial.reading()))).measurement();
  }

  /** Too few of its bands are heard to know a filter by; one in 5,000 was once told a flat path. */
  @Test
  void isNotToldOfABandTooNarrowToKnowItsFilter() {
    for (double decibels : new double[] {60, 30, 10}) {
      Measurement measured =
          measured(
              Optional.of(BandPass.SUBWOOFER),
              FilteredTrial.Kind.SPEECH,
              decibels,
              1131464545961829349L);
      assertEquals(Optional.empty(), measured.pure());
      assertEquals(Polarity.UNDETERMINED, measured.polarity());
    }
  }
}
