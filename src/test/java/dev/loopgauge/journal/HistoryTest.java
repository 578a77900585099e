package dev.loopgauge.journal;

import static dev.loopgauge.journal.Logged.delay;
import static dev.loopgauge.journal.Logged.heading;
import static dev.loopgauge.journal.Logged.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.HistoryPoint.Mark;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HistoryTest {
  private static final long SEED = 20_261_127;

  private static History of(double... samples) {
    List<Heading> headings = new ArrayList<>();
    for (int i = 0; i < samples.length; i++) {
      headings.add(heading(i, "Night " + i, When.BEFORE, "vocal", delay(samples[i], 0.04)));
    }
    return History.of(headings).orElseThrow();
  }

  private static List<Mark> marks(History history) {
    return history.points().stream().map(HistoryPoint::mark).toList();
  }

  @Test
  void aLastingChangeIsAStepAndOneOddReadingAnOutlier() {
    History history = of(595, 595.02, 640, 594.98, 595, 723, 723.01, 722.99);
    assertEquals(
        List.of(
            Mark.USUAL,
            Mark.USUAL,
            Mark.OUTLIER,
            Mark.USUAL,
            Mark.USUAL,
            Mark.STEP,
            Mark.USUAL,
            Mark.USUAL),
        marks(history));
    assertEquals(1, history.steps().size());
    assertEquals(128, history.steps().get(0).samples(), 0.01);
    assertEquals("Night 4", history.steps().get(0).before().show());
    assertEquals("Night 5", history.steps().get(0).after().show());
    assertEquals(723, history.levelSamples(), 1e-9);
  }

  @Test
  void theLastReadingAloneIsAnOutlierUntilAnotherConfirmsIt() {
    assertEquals(Mark.OUTLIER, marks(of(595, 595, 595, 723)).get(3));
    assertEquals(Mark.STEP, marks(of(595, 595, 595, 723, 723)).get(3));
    assertEquals(Mark.STEP, marks(of(595, 723)).get(1));
  }

  @Test
  void readingsApartByTheirOwnUncertaintyAreUsual() {
    List<Heading> headings = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double samples = i == 6 ? 597 : 595;
      double uncertainty = i == 6 ? 2 : 0.04;
      headings.add(heading(i, "n", When.BEFORE, "vocal", delay(samples, uncertainty)));
    }
    assertTrue(
        marks(History.of(headings).orElseThrow()).stream().allMatch(mark -> mark == Mark.USUAL));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.05, -0.02})
  void aDriftIsFoundThroughOutliersAndAfterASteps(double perDay) {
    SplittableRandom random = new SplittableRandom(SEED);
    double[] samples = new double[80];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (i < 30 ? 595 : 723) + perDay * i + 0.02 * random.nextGaussian();
    }
    samples[50] += 40;
    samples[61] -= 25;
    History history = of(samples);
    assertEquals(1, history.steps().size(), "seed " + SEED + history.steps());
    assertEquals(Mark.OUTLIER, marks(history).get(50));
    assertEquals(Mark.OUTLIER, marks(history).get(61));
    DelayTrend drift = history.drift().orElseThrow();
    assertEquals(48, drift.readings());
    assertEquals(perDay != 0, drift.isThere(), "seed " + SEED + " " + drift);
    assertEquals(perDay, drift.samplesPerDay(), 0.001, "seed " + SEED);
    assertTrue(drift.low() <= drift.samplesPerDay() && drift.samplesPerDay() <= drift.high());
  }

  @Test
  void fewReadingsTellNoDrift() {
    assertEquals(Optional.empty(), of(595, 595.2, 595.4, 595.6).drift());
  }

  @Test
  void entriesWithoutANumberAreListedAndNotCounted() {
    List<Heading> headings =
        List.of(
            refused(0, "a", When.BEFORE, "vocal"),
            heading(1, "b", When.BEFORE, "vocal", delay(595, 0.04)));
    History history = History.of(headings).orElseThrow();
    assertEquals(List.of(Mark.NO_NUMBER, Mark.USUAL), marks(history));
    assertEquals(Optional.empty(), History.of(headings.subList(0, 1)));
  }

  @Test
  void ratesAreBroughtToThatOfTheLast() {
    SampleRate other = new SampleRate(96_000);
    History history =
        History.of(
                List.of(
                    heading(0, "a", When.BEFORE, "vocal", delay(480, 0.04)),
                    heading(1, "b", When.BEFORE, "vocal", delay(960, 0.08, other))))
            .orElseThrow();
    assertEquals(other, history.rate());
    assertEquals(960, history.points().get(0).samples().orElseThrow(), 1e-9);
    assertEquals(List.of(Mark.USUAL, Mark.USUAL), marks(history));
  }

  @Test
  void thousandsOfReadingsInARowAreCalm() {
    SplittableRandom random = new SplittableRandom(SEED);
    double[] samples = new double[5000];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = 595 + 0.2 * random.nextGaussian();
    }
    History history = of(samples);
    assertEquals(List.of(), history.steps(), "seed " + SEED);
    long odd = marks(history).stream().filter(mark -> mark == Mark.OUTLIER).count();
    assertTrue(odd < 12, odd + " outliers, seed " + SEED);
  }

  /** Of readings that agree, one more than 3.5 times 0.05 samples off stands out. */
  @ParameterizedTest
  @CsvSource({"595.17, USUAL", "595.18, OUTLIER", "594.83, USUAL", "594.82, OUTLIER"})
  void readingsBreatheByATwentiethOfASample(double odd, Mark mark) {
    assertEquals(mark, marks(of(595, 595, 595, odd, 595, 595, 595)).get(3));
  }

  @ParameterizedTest
  @CsvSource({"595.45, 0", "595.55, 1", "594.55, 0", "594.45, 1"})
  void aStepIsMoreThanHalfASample(double after, int steps) {
    assertEquals(steps, of(595, 595, 595, after, after, after).steps().size());
  }

  /** From one to the next these move by 0, 3, 0, 3 and 3 samples. */
  @Test
  void sixReadingsTellScatterFromASingleStepAndFiveDoNot() {
    assertEquals(3, of(595, 595, 598, 598, 601).steps().get(0).samples(), 1e-9);
    assertEquals(List.of(), of(595, 595, 598, 598, 601, 598).steps());
  }

  /** A steady rise over twelve days. */
  @ParameterizedTest
  @CsvSource({"0.105, true", "0.095, false", "-0.105, true"})
  void aDriftIsMoreThanATenthOfASample(double inAll, boolean there) {
    double[] days = IntStream.range(0, 12).mapToDouble(i -> i).toArray();
    double[] samples = IntStream.range(0, 12).mapToDouble(i -> 595 + inAll * i / 11).toArray();
    assertEquals(there, DelayTrend.of(days, samples).isThere());
  }
}
