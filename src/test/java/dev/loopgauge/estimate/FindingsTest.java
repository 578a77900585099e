package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.Response;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong with a capture is found, and nothing where nothing is. */
class FindingsTest {
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.5);

  private static Estimate estimate(double[] ret) {
    return ESTIMATOR.estimate(List.of(Rig.reading(ret, -80, 0)));
  }

  private static Measurement measured(Estimate estimate) {
    return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
  }

  private static Finding only(Estimate estimate) {
    assertEquals(1, estimate.findings().size(), estimate::toString);
    return estimate.findings().get(0);
  }

  @Test
  void findsNothingWrongWithCleanReturn() {
    Estimate estimate = estimate(Rig.arrival(321.5, 0.5));
    assertEquals(List.of(), estimate.findings());
    assertEquals(1, measured(estimate).arrivals().size());
    assertFalse(measured(estimate).ambiguous());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3, -10, -20, -28})
  void findsSecondArrivalWithDelayLevelAndPolarity(double levelDb) {
    double gain = Math.pow(10, levelDb / 20);
    Measurement m =
        measured(estimate(Rig.sum(Rig.arrival(600.25, 0.5), Rig.arrival(480.5, -0.5 * gain))));
    assertEquals(600.25, m.delay().samples(), 0.01);
    assertEquals(2, m.arrivals().size(), m.arrivals()::toString);
    assertEquals(480.5, m.arrivals().get(1).delaySamples(), 0.05);
    assertEquals(levelDb - 6.02, m.arrivals().get(1).levelDb(), 0.1);
    assertEquals(Polarity.INVERTED, m.arrivals().get(1).polarity());
    assertEquals(levelDb > -6, m.ambiguous());
  }

  @Test
  void responseShowsEachArrivalAtItsPlaceAndQuietBetween() {
    Measurement m =
        measured(
                new DelayEstimator(0.5)
                    .estimate(
                        List.of(
                            Rig.reading(
                                Rig.sum(Rig.arrival(600, 0.5), Rig.arrival(3000, -0.05)),
                                -100,
                                0))))
            .lessCalibration(100, 0.01, Method.CALIBRATED);
    Response response = m.response().orElseThrow();
    int points = response.levelsDb().size();
    assertTrue(points >= 256 && points <= 512, "points " + points);
    assertEquals(0, levelAt(response, 500), 0.01);
    assertEquals(-20, levelAt(response, 2900), 0.5);
    assertTrue(levelAt(response, 1700) < -60, response::toString);
    assertTrue(response.firstSamples() <= 500 - 480, response::toString);
    assertTrue(response.firstSamples() + points * response.stepSamples() >= 2900 + 480);
  }

  private static double levelAt(Response response, double delay) {
    return response
        .levelsDb()
        .get((int) ((delay - response.firstSamples()) / response.stepSamples()));
  }

  @Test
  void findsArrivalFarOff() {
    Measurement m =
        measured(
            estimate(
                Rig.sum(Rig.arrival(600, 0.5), Rig.arrival(9600, 0.1), Rig.arrival(700, 0.05))));
    assertEquals(3, m.arrivals().size(), m.arrivals()::toString);
    assertEquals(9600, m.arrivals().get(1).delaySamples(), 0.01);
    assertEquals(700, m.arrivals().get(2).delaySamples(), 0.05);
  }

  @Test
  void measuresTheFirstArrivalWhenAskedTo() {
    List<Reading> readings =
        List.of(Rig.reading(Rig.sum(Rig.arrival(600, 0.5), Rig.arrival(480, 0.4)), -80, 0));
    Estimate chosen = new DelayEstimator(0.5, ArrivalChoice.FIRST).estimate(readings);
    Measurement first = measured(chosen);
    assertEquals(480, first.delay().samples(), 0.01);
    assertFalse(first.ambiguous());
    assertFalse(only(chosen).hint().contains("--arrival"), chosen::toString);
    Finding open = only(ESTIMATOR.estimate(readings));
    assertEquals(FindingCode.TWO_ARRIVALS, open.code());
    assertTrue(open.hint().contains("--arrival first"), open::toString);
  }

  @Test
  void tellsDriftOfTheClocksFromTheRepeats() {
    double perTurn = 50e-6 * 120_000;
    Estimate estimate =
        ESTIMATOR.estimate(Rig.turns(600, 600 + perTurn, 600 + 2 * perTurn, 600 + 3 * perTurn));
    assertEquals(FindingCode.CLOCKS_NOT_LOCKED, only(estimate).code());
    Measurement m = measured(estimate);
    assertEquals(50, m.clockDriftPpm().orElseThrow(), 0.01);
    assertEquals(600 + 1.5 * perTurn, m.delay().samples(), 0.01);
    assertTrue(m.uncertaintySamples() > perTurn, m::toString);
  }

  @Test
  void tellsSlowDriftWithinOneSample() {
    Estimate estimate = ESTIMATOR.estimate(Rig.turns(600, 600.12, 600.24));
    assertEquals(FindingCode.CLOCKS_NOT_LOCKED, only(estimate).code());
    assertEquals(1, measured(estimate).clockDriftPpm().orElseThrow(), 0.01);
  }

  @Test
  void lockedClocksShowNoDrift() {
    Estimate estimate = ESTIMATOR.estimate(Rig.turns(600, 600, 600, 600));
    assertEquals(List.of(), estimate.findings());
    assertEquals(0, measured(estimate).clockDriftPpm().orElseThrow(), 0.01);
  }

  @Test
  void showsGroupsWhereRepeatsDisagreeAndDecidesNothing() {
    Estimate estimate = ESTIMATOR.estimate(Rig.turns(600, 664, 600, 600, 664));
    assertEquals(FindingCode.DROPOUT, only(estimate).code());
    assertTrue(only(estimate).text().contains("3 at 600.00, 2 at 664.00"), only(estimate).text());
    assertEquals(600, measured(estimate).delay().samples(), 0.01);
    assertTrue(measured(estimate).ambiguous());
  }

  @Test
  void refusesRepeatsOfWhichNoTwoAgree() {
    Estimate estimate = ESTIMATOR.estimate(Rig.turns(600, 730, 610, 900));
    assertEquals(FindingCode.DROPOUT, only(estimate).code());
    assertInstanceOf(Estimate.Refused.class, estimate);
  }

  /** A gap in one of three sweeps. */
  @Test
  void findsGapWithItsTimeAndLength() {
    List<Reading> readings = new ArrayList<>(Rig.turns(600, 600, 600));
    double[] ret = Rig.arrival(600, 0.5);
    Arrays.fill(ret, 24_600, 25_560, 0);
    readings.set(1, Rig.reading(ret, -80, 120_000));
    Estimate estimate = ESTIMATOR.estimate(readings);
    List<MissingSound> lost = measured(estimate).lostSound();
    assertEquals(1, lost.size(), lost::toString);
    assertEquals(3.0, lost.get(0).atSeconds(), 0.01);
    assertEquals(20, lost.get(0).ms(), 5);
    Finding finding = only(estimate);
    assertEquals(FindingCode.DROPOUT, finding.code());
    assertTrue(finding.text().contains("3.00 s"), finding.text());
    assertTrue(finding.text().matches("about (15|20|25) ms.*"), finding.text());
  }

  /** A recording that stopped too early may have had too much level besides, and both is said. */
  @Test
  void saysAllThatIsWrongWithARecordingThatStoppedTooEarly() {
    double[] cut = Arrays.copyOf(Rig.arrival(321.5, 0.5), 18_000);
    Arrays.fill(cut, 9_000, 9_008, 0.9);
    Reading reading = new Reading(Rig.SWEEP, Signal.of(Rig.RATE, cut));
    Estimate estimate = ESTIMATOR.estimate(List.of(reading));
    assertInstanceOf(Estimate.Refused.class, estimate);
    assertEquals(
        List.of(FindingCode.CLIPPED, FindingCode.WEAK_RETURN),
        estimate.findings().stream().map(Finding::code).toList(),
        estimate::toString);
  }

  @Test
  void saysThatTheDelayIsBeyondWhatWasSearched() {
    Finding finding =
        only(
            new DelayEstimator(0.1).estimate(List.of(Rig.reading(Rig.arrival(9600, 0.5), -80, 0))));
    assertEquals(FindingCode.BEYOND_WINDOW, finding.code());
    assertTrue(finding.text().contains("0.20 s late"), finding.text());
  }

  @Test
  void saysThatTheReturnRunsAtTheWrongSpeed() {
    double[] ret = new double[120_000];
    double[] sweep = Rig.SWEEP.toArray();
    for (int i = 0; i * 44_100.0 / 48_000 < sweep.length - 1; i++) {
      double position = i * 44_100.0 / 48_000;
      int before = (int) position;
      double part = position - before;
      ret[500 + i] = 0.5 * (sweep[before] * (1 - part) + sweep[before + 1] * part);
    }
    Finding finding = only(estimate(ret));
    assertEquals(FindingCode.RATE_MISMATCH, finding.code());
    assertTrue(finding.text().contains("44100/48000"), finding.text());
  }

  @Test
  void delaysOfOctaveBandsAgreeOnPureDelay() {
    List<Band> bands = measured(estimate(Rig.arrival(321.5, 0.5))).bands();
    assertTrue(bands.size() >= 9, bands::toString);
    for (Band band : bands) {
      assertEquals(321.5, band.delaySamples(), 2 * band.uncertaintySamples(), band::toString);
    }
  }

  @Test
  void levelsOfOctaveBandsAreThePathsGain() {
    for (Band band : measured(estimate(Rig.arrival(321.5, 0.25))).bands()) {
      assertEquals(20 * Math.log10(0.25), band.levelDb(), 0.02, band::toString);
      assertTrue(band.levelUncertaintyDb() < 0.1, band::toString);
    }
  }

  /** A one-pole low-pass y[n] = b x[n] + (1 - b) y[n - 1], whose magnitude follows from b. */
  @Test
  void levelsOfOctaveBandsFollowALowPass() {
    double b = 0.3;
    double[] x = Rig.arrival(300, 0.5);
    double[] y = new double[x.length];
    for (int i = 1; i < x.length; i++) {
      y[i] = b * x[i] + (1 - b) * y[i - 1];
    }
    for (Band band : measured(estimate(y)).bands()) {
      double w = 2 * Math.PI * band.centreHz() / 48_000;
      double power = 0.25 * b * b / (1 - 2 * (1 - b) * Math.cos(w) + (1 - b) * (1 - b));
      assertEquals(10 * Math.log10(power), band.levelDb(), 1, band::toString);
    }
  }

  /** An all-pass of first order at 1 kHz delays low bands by 2 (1 - a) / (1 + a) samples or so. */
  @Test
  void delaysOfOctaveBandsShowAnAllPass() {
    double[] x = Rig.arrival(300, 0.5);
    double t = Math.tan(Math.PI * 1000 / 48_000);
    double a = (t - 1) / (t + 1);
    double[] y = new double[x.length];
    for (int i = 1; i < x.length; i++) {
      y[i] = a * x[i] + x[i - 1] - a * y[i - 1];
    }
    Signal ret = Signal.of(Rig.RATE, y);
    Measurement m = measured(ESTIMATOR.estimate(List.of(Rig.reading(ret.toArray(), -80, 0))));
    double low = m.bands().get(1).delaySamples() - 300;
    double high = m.bands().get(m.bands().size() - 1).delaySamples() - 300;
    double groupDelayAtZero = (1 - a) / (1 + a);
    assertEquals(groupDelayAtZero, low, 0.5);
    assertEquals(0, high, 0.5);
    assertEquals(1, m.arrivals().size(), m.arrivals()::toString);
  }

  /** A path from 200 Hz to 4 kHz rings on either side of its one arrival. */
  @Test
  void takesNoRingingOfNarrowPathForAnArrival() {
    RealFft fft = new RealFft(1 << 17);
    double[] narrow = Arrays.copyOf(Rig.arrival(600, 0.5), fft.length());
    fft.forward(narrow);
    for (int k = 0; k < fft.length() / 2; k++) {
      double hertz = 48_000.0 * k / fft.length();
      if (hertz < 200 || hertz > 4000) {
        narrow[2 * k] = 0;
        narrow[2 * k + 1] = 0;
      }
    }
    fft.inverse(narrow);
    Measurement m = measured(estimate(Arrays.copyOf(narrow, 120_000)));
    assertEquals(600, m.delay().samples(), 0.05);
    assertEquals(1, m.arrivals().size(), m.arrivals()::toString);
  }

  @Test
  void doubtsReferenceThatOnlyHearsCrosstalk() {
    Finding finding = only(estimate(Rig.arrival(600, 30)));
    assertEquals(FindingCode.NO_REFERENCE, finding.code());
    assertFalse(finding.refuses());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-50, -80, -110})
  void blamesTheReferenceThatHearsOnlyHiss(double hissDbfs) {
    SplittableRandom random = new SplittableRandom(5);
    double[] hiss = new double[Rig.SWEEP.length()];
    for (int i = 0; i < hiss.length; i++) {
      hiss[i] = Math.pow(10, hissDbfs / 20) * random.nextGaussian();
    }
    Signal ret = Rig.reading(Rig.arrival(600, 0.5), -80, 0).ret().slice(0, 120_000);
    Estimate estimate = ESTIMATOR.estimate(List.of(new Reading(Signal.of(Rig.RATE, hiss), ret)));
    Finding finding = only(estimate);
    assertEquals(FindingCode.NO_REFERENCE, finding.code());
    assertTrue(finding.refuses());
    assertTrue(finding.hint().contains("really patched"), finding::hint);
  }

  @Test
  void saysThatTheReferenceIsSilent() {
    Reading heard = Rig.reading(Rig.arrival(600, 0.5), -80, 0);
    Signal silence = Signal.silence(Rig.RATE, Rig.SWEEP.length());
    Finding finding = only(ESTIMATOR.estimate(List.of(new Reading(silence, heard.ret()))));
    assertEquals(FindingCode.NO_REFERENCE, finding.code());
    assertTrue(finding.refuses());
  }

  /** The noise that such a reference hears besides doesn't come back: no level moves. */
  @ParameterizedTest
  @ValueSource(doubles = {-100, -120})
  void findsNothingElseWhereTheReferenceHearsOnlyCrosstalk(double noiseDbfs) {
    SplittableRandom random = new SplittableRandom(6);
    double[] crosstalk = Rig.arrival(0, 1e-3);
    for (int i = 0; i < crosstalk.length; i++) {
      crosstalk[i] += Math.pow(10, noiseDbfs / 20) * random.nextGaussian();
    }
    Signal ret = Rig.reading(Rig.arrival(600, 0.9), -110, 0).ret().slice(0, 120_000);
    Finding finding =
        only(ESTIMATOR.estimate(List.of(new Reading(Signal.of(Rig.RATE, crosstalk), ret))));
    assertEquals(FindingCode.NO_REFERENCE, finding.code());
    assertTrue(finding.text().contains("59 dB louder"), finding::text);
  }

  /** 48 / 44.1 is 8.8 % more, 44.1 / 48 is 8.1 % less (derived). */
  @Test
  void saysThatTheReturnRunsTooFast() {
    double[] ret = new double[120_000];
    double[] sweep = Rig.SWEEP.toArray();
    for (int i = 0; i * 48_000.0 / 44_100 < sweep.length - 1; i++) {
      double position = i * 48_000.0 / 44_100;
      int before = (int) position;
      double part = position - before;
      ret[500 + i] = 0.5 * (sweep[before] * (1 - part) + sweep[before + 1] * part);
    }
    Finding finding = only(estimate(ret));
    assertEquals(FindingCode.RATE_MISMATCH, finding.code());
    assertTrue(finding.text().endsWith("48000/44100 of the reference's speed, 8.8 % too fast"));
    assertTrue(finding.hint().contains("48 kHz what is labelled 44.1 kHz"), finding::hint);
  }

  /** A digital gap is proven by its sharp edges, even where each frequency comes but once. */
  @ParameterizedTest
  @CsvSource({"0.35, 10", "0.5, 2", "0.5, 40", "0.8, 2", "0.8, 10", "0.8, 40"})
  void findsZerosWithinOneSweep(double atSeconds, int ms) {
    Reading whole = Rig.reading(Rig.arrival(600, 0.5), -80, 0);
    double[] ret = whole.ret().slice(0, whole.ret().length()).toArray();
    int from = (int) (atSeconds * 48_000) + 600;
    Arrays.fill(ret, from, from + ms * 48, 0);
    Finding finding =
        ESTIMATOR
            .estimate(List.of(new Reading(Rig.SWEEP, Signal.of(Rig.RATE, ret))))
            .findings()
            .stream()
            .filter(f -> f.code() == FindingCode.DROPOUT)
            .findFirst()
            .orElseThrow();
    String words = "about %d ms of sound are missing at %.2f s".formatted(ms, from / 48_000.0);
    assertEquals(words, finding.text());
  }

  /** The bass comes late by 10 ms and more, below a crossover of first order at 100 Hz. */
  @ParameterizedTest
  @ValueSource(ints = {96, 480, 1500})
  void takesNoLateBassForLostSound(int later) {
    double[] whole = Rig.arrival(600, 0.5);
    double[] ret = whole.clone();
    double share = 1 - Math.exp(-2 * Math.PI * 100 / 48_000);
    double low = 0;
    for (int i = 0; i + later < ret.length; i++) {
      low += share * (whole[i] - low);
      ret[i] -= low;
      ret[i + later] += low;
    }
    List<Finding> findings = estimate(ret).findings();
    assertTrue(
        findings.stream().noneMatch(f -> f.code() == FindingCode.DROPOUT), findings::toString);
  }

  /** A low-pass path whose sound is rounded to 16 bits fades into zeros: nothing is lost. */
  @Test
  void takesNoFadeIntoSilenceForLostSound() {
    double[] ret = Rig.arrival(600, 0.5);
    double low = 0;
    double lower = 0;
    for (int i = 0; i < ret.length; i++) {
      low += 0.02 * (ret[i] - low);
      lower += 0.02 * (low - lower);
      ret[i] = Math.rint(lower * 32_768) / 32_768;
    }
    List<Finding> findings =
        ESTIMATOR.estimate(List.of(new Reading(Rig.SWEEP, Signal.of(Rig.RATE, ret)))).findings();
    assertTrue(
        findings.stream().noneMatch(f -> f.code() == FindingCode.DROPOUT), findings::toString);
  }
}
