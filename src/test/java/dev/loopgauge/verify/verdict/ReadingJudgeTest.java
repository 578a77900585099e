package dev.loopgauge.verify.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.ExpectedLevel;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each aspect of a reading, on either side of what is good. */
class ReadingJudgeTest {
  private Polarity polarity = Polarity.NORMAL;
  private double levelDb;
  private double levelUncertaintyDb = 0.1;
  private boolean ambiguous;
  private final List<MissingSound> lost = new ArrayList<>();
  private final List<Band> bands = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  private Estimate.Found found() {
    Measurement measured =
        new Measurement(
            new Latency(400, new SampleRate(48_000)),
            0.1,
            Optional.empty(),
            Optional.empty(),
            polarity,
            levelDb,
            levelUncertaintyDb,
            60,
            Method.REFERENCED,
            3,
            Optional.of(new ClockDrift(50, 0.1)),
            List.of(),
            lost,
            bands,
            Optional.empty(),
            ambiguous);
    return new Estimate.Found(measured, findings);
  }

  private OverallVerdict verdict(Expectation expected) {
    return JudgedReading.ofPath(
            found(), Optional.empty(), Optional.empty(), expected, Optional.empty())
        .verdict();
  }

  private OverallVerdict verdict() {
    return verdict(Expectation.NONE);
  }

  private static Judgement of(Aspect aspect, OverallVerdict verdict) {
    return verdict.of(aspect).orElseThrow().judgement();
  }

  private static String text(Aspect aspect, OverallVerdict verdict) {
    return verdict.of(aspect).orElseThrow().text();
  }

  private void finds(FindingCode code) {
    findings.add(new Finding(code, false, "it is so", "try"));
  }

  @Test
  void aCleanReadingIsGoodEvenWithoutABudget() {
    assertEquals(Judgement.GOOD, verdict().judgement());
    assertEquals(Judgement.NOT_JUDGED, of(Aspect.DELAY, verdict()));
    assertEquals(Judgement.NOT_JUDGED, of(Aspect.LEVEL, verdict()));
    assertEquals(Judgement.NOT_JUDGED, of(Aspect.RESPONSE, verdict()));
  }

  @ParameterizedTest
  @CsvSource({
    "NORMAL, , GOOD",
    "INVERTED, , BAD",
    "INVERTED, true, GOOD",
    "NORMAL, true, BAD",
    "INVERTED, false, BAD"
  })
  void polarityIsNormalUnlessTheFileSaysOtherwise(
      Polarity heard, Boolean inverted, Judgement expected) {
    polarity = heard;
    OverallVerdict verdict =
        verdict(
            new Expectation(
                Optional.ofNullable(inverted), Optional.empty(), OptionalDouble.empty()));
    assertEquals(expected, of(Aspect.POLARITY, verdict));
  }

  @Test
  void polarityIsNotJudgedWithoutAPath() {
    polarity = Polarity.INVERTED;
    OverallVerdict verdict = JudgedReading.ofNoPath(found(), Optional.empty()).verdict();
    assertEquals(Judgement.NOT_JUDGED, of(Aspect.POLARITY, verdict));
    assertEquals(Judgement.GOOD, verdict.judgement());
  }

  /** 1 dB of tolerance around -6 dB, known to 0.1 dB. */
  @ParameterizedTest
  @CsvSource({
    "-5.11, GOOD",
    "-5.09, UNDECIDED",
    "-4.91, UNDECIDED",
    "-4.89, BAD",
    "-7.11, BAD",
    "-6.89, GOOD"
  })
  void aLevelIsJudgedWithItsUncertainty(double heard, Judgement expected) {
    levelDb = heard;
    assertEquals(expected, of(Aspect.LEVEL, verdict(expectingLevel())));
  }

  @Test
  void aLevelThatMovesIsUndecidedWhereItIsExpected() {
    levelDb = -6;
    finds(FindingCode.LEVEL_MOVES);
    assertEquals(Judgement.UNDECIDED, of(Aspect.LEVEL, verdict(expectingLevel())));
    assertEquals(Judgement.NOT_JUDGED, of(Aspect.LEVEL, verdict()));
  }

  private static Expectation expectingLevel() {
    return new Expectation(
        Optional.empty(), Optional.of(new ExpectedLevel(-6, 1)), OptionalDouble.empty());
  }

  /** Three octaves, one of them off by x: by 2 x / 3 from the mean of all; 3 dB are allowed. */
  @ParameterizedTest
  @CsvSource({"4.3, GOOD", "4.5, UNDECIDED", "-4.7, BAD", "-4.3, GOOD"})
  void eachOctaveIsJudgedAgainstTheMeanOfAll(double off, Judgement expected) {
    bands.add(new Band(500, 400, 0.1, -12, 0.1));
    bands.add(new Band(1000, 400, 0.1, -12, 0.1));
    bands.add(new Band(2000, 400, 0.1, -12 + off, 0.1));
    assertEquals(expected, of(Aspect.RESPONSE, verdict(expectingResponse())));
  }

  @Test
  void aResponseOfOneOctaveIsUndecided() {
    bands.add(new Band(500, 400, 0.1, -12, 0.1));
    assertEquals(Judgement.UNDECIDED, of(Aspect.RESPONSE, verdict(expectingResponse())));
  }

  private static Expectation expectingResponse() {
    return new Expectation(Optional.empty(), Optional.empty(), OptionalDouble.of(3));
  }

  @Test
  void lostSoundIsToldWithItsTimeAndLength() {
    finds(FindingCode.DROPOUT);
    lost.add(new MissingSound(61.43, 20));
    lost.add(new MissingSound(65, 5));
    assertEquals(Judgement.BAD, of(Aspect.LOST_SOUND, verdict()));
    assertEquals("20 ms at 1:01.4, and once more", text(Aspect.LOST_SOUND, verdict()));
  }

  @Test
  void clocksAreToldInMsAnHour() {
    assertEquals("locked within 50.10 ppm", text(Aspect.CLOCKS, verdict()));
    finds(FindingCode.CLOCKS_NOT_LOCKED);
    assertEquals(Judgement.BAD, of(Aspect.CLOCKS, verdict()));
    assertEquals("drifts 180 ms an hour (50 ppm)", text(Aspect.CLOCKS, verdict()));
  }

  @Test
  void arrivalsThatCouldEachBeThePathAreUndecided() {
    ambiguous = true;
    assertEquals(Judgement.UNDECIDED, of(Aspect.ARRIVALS, verdict()));
    assertEquals(Judgement.UNDECIDED, verdict().judgement());
  }

  @Test
  void clippingThatMovesNothingIsToldAndNotBad() {
    finds(FindingCode.CLIPPED);
    assertEquals(Judgement.GOOD, of(Aspect.CLIPPING, verdict()));
  }

  @ParameterizedTest
  @CsvSource({"400, GOOD", "64, BAD"})
  void whatTheHostReportsIsJudgedAlsoWithoutAPath(double reported, Judgement expected) {
    HostCheck check = HostCheck.of(found().measurement(), ReportedDelay.ofSamples(reported));
    OverallVerdict verdict = JudgedReading.ofNoPath(found(), Optional.of(check)).verdict();
    assertEquals(expected, of(Aspect.HOST, verdict));
    assertEquals(expected, verdict.judgement());
  }

  @Test
  void aPictureOutOfStepMakesTheWholeBad() {
    AspectVerdict late = AspectVerdict.of(Aspect.PICTURE, false, "sound late by 130 ms");
    OverallVerdict verdict =
        JudgedReading.ofPath(
                found(), Optional.empty(), Optional.empty(), Expectation.NONE, Optional.of(late))
            .verdict();
    assertEquals(Judgement.BAD, verdict.judgement());
  }

  @Test
  void aRefusalLeavesTheDelayOpen() {
    Finding why = new Finding(FindingCode.NO_RETURN, true, "the return is silent", "try");
    OverallVerdict verdict =
        JudgedReading.ofNoPath(new Estimate.Refused(List.of(why)), Optional.empty()).verdict();
    assertEquals(Judgement.UNDECIDED, verdict.judgement());
    assertEquals("the return is silent", text(Aspect.DELAY, verdict));
  }

  @Test
  void anAspectHasOneVerdict() {
    AspectVerdict good = AspectVerdict.of(Aspect.CLOCKS, true, "locked");
    assertThrows(IllegalArgumentException.class, () -> new OverallVerdict(List.of(good, good)));
  }
}
