package dev.loopgauge.estimate.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A level that steps while a reading is taken. */
class LevelStepTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final int DELAY = 200;
  private static final Signal APPLAUSE = ShowSound.applause(RATE, 3, new SplittableRandom(1));
  private static final Signal SPEECH = ShowSound.speech(RATE, 3, new SplittableRandom(2));

  /** A return 30 dB and more above noise whose level steps once. */
  private static Estimate heard(Signal sent, double stepDb, double atSeconds) {
    double[] played = sent.toArray();
    double[] ret = new double[played.length + RATE.hertz() / 2];
    SplittableRandom random = new SplittableRandom(3);
    int at = DELAY + RATE.samplesIn(atSeconds);
    double noise = 0.03 * sent.rms();
    for (int i = 0; i < ret.length; i++) {
      int from = i - DELAY;
      double arrival = from >= 0 && from < played.length ? played[from] : 0;
      double gain = i < at ? 0.5 : 0.5 * Math.pow(10, stepDb / 20);
      ret[i] = gain * arrival + 0.5 * noise * random.nextGaussian();
    }
    return new DelayEstimator(0.25).estimate(sent, Signal.of(RATE, ret));
  }

  @ParameterizedTest
  @CsvSource({
    "1, rises by about 1.0 dB",
    "-2, falls by about 2.0 dB",
    "3, rises by about 3.0 dB",
    "-9, falls by about 9.0 dB"
  })
  void isToldWithItsSizeAndTime(double stepDb, String words) {
    Estimate estimate = heard(APPLAUSE, stepDb, 1.2);
    assertInstanceOf(Estimate.Found.class, estimate, estimate::toString);
    List<Finding> findings = estimate.findings();
    assertEquals(1, findings.size(), findings::toString);
    assertEquals(FindingCode.LEVEL_MOVES, findings.get(0).code());
    assertEquals("the path's level " + words + " at about 1.2 s", findings.get(0).text());
  }

  @Test
  void isToldInSpeech() {
    String text = heard(SPEECH, 3, 1.5).findings().get(0).text();
    assertTrue(text.startsWith("the path's level rises by about 3."), text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.4})
  void isNoneBelowHalfADecibel(double stepDb) {
    for (Signal sent : List.of(APPLAUSE, SPEECH)) {
      assertEquals(List.of(), heard(sent, stepDb, 1.5).findings());
    }
  }

  /** The gain that a sweep has before an instant is not the one after it, whatever the filter. */
  @ParameterizedTest
  @CsvSource({"2, rises by about 2.0 dB", "-3, falls by about 3.0 dB"})
  void isToldOfOneSweep(double stepDb, String words) {
    Signal sweep = ExponentialSweep.fullBand(2).render(RATE);
    List<String> texts = heard(sweep, stepDb, 1).findings().stream().map(Finding::text).toList();
    assertEquals(List.of("the path's level " + words + " at about 1.0 s"), texts);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.4})
  void isNoneOfOneSweepBelowHalfADecibel(double stepDb) {
    Signal sweep = ExponentialSweep.fullBand(2).render(RATE);
    assertEquals(List.of(), heard(sweep, stepDb, 1).findings());
  }

  /** Three sweeps through a band, of which the second is louder from its middle on. */
  private static Estimate repeated(double stepDb) {
    Signal sweep = ExponentialSweep.fullBand(1).render(RATE);
    double[] played = sweep.toArray();
    SplittableRandom random = new SplittableRandom(4);
    double gain = Math.pow(10, stepDb / 20);
    List<Reading> readings = new ArrayList<>();
    for (int repeat = 0; repeat < 3; repeat++) {
      double[] ret = new double[sweep.length() + RATE.hertz() / 2];
      double low = 0;
      for (int i = 0; i < ret.length; i++) {
        int from = i - DELAY;
        boolean louder = repeat == 2 || (repeat == 1 && from > sweep.length() / 2);
        double arrival = from >= 0 && from < sweep.length() ? played[from] : 0;
        low += 0.3 * ((louder ? gain : 1) * arrival - low);
        ret[i] = low + 0.02 * random.nextGaussian();
      }
      readings.add(new Reading(sweep, Signal.of(RATE, ret), repeat * ret.length));
    }
    return new DelayEstimator(0.25).estimate(readings);
  }

  @ParameterizedTest
  @CsvSource({"1, rises by about 1.0 dB", "-2, falls by about 2.0 dB"})
  void isToldOfSeveralSweeps(double stepDb, String words) {
    List<String> texts =
        repeated(stepDb).findings().stream()
            .filter(finding -> finding.code() == FindingCode.LEVEL_MOVES)
            .map(Finding::text)
            .toList();
    String whole = "the path's level " + words + " from the first repeat to the last";
    assertEquals(List.of(whole), texts);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.4})
  void isNoneOfSeveralSweepsBelowHalfADecibel(double stepDb) {
    assertTrue(
        repeated(stepDb).findings().stream().noneMatch(f -> f.code() == FindingCode.LEVEL_MOVES));
  }
}
