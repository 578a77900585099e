package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Resampled;
import dev.loopgauge.estimate.result.Arrival;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.verify.verdict.TrackJudge;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** No number that isn't finite leaves the estimator, whatever the recording. */
class FiniteNumbersTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final double SECONDS = 6;

  /** Speech with pauses of digital silence, which leave some windows half empty, in 16 bits. */
  private static Signal speechWithPauses(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] sound = ShowSound.speech(RATE, SECONDS, random).toArray();
    int at = 0;
    while (at < sound.length) {
      int pause = at + RATE.samplesIn(random.nextDouble(0.2, 1.4));
      at = pause + RATE.samplesIn(random.nextDouble(0.1, 0.7));
      Arrays.fill(sound, Math.min(pause, sound.length), Math.min(at, sound.length), 0);
    }
    return Signal.of(RATE, rounded(sound, 1));
  }

  private static double[] rounded(double[] sound, double gain) {
    return Arrays.stream(sound).map(s -> Math.rint(gain * s * 32_768) / 32_768).toArray();
  }

  private static Signal drifting(Signal sent, double ppm) {
    Samples drifting = new Resampled(sent.slice(-200, sent.length()), 0, -ppm / (1e6 + ppm));
    double[] ret = new double[sent.length()];
    drifting.copyTo(0, ret, 0, ret.length);
    return Signal.of(RATE, rounded(ret, 0.5));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 100", "1, 100", "2, 100", "3, 100", "4, -300", "5, 20", "6, 999", "7, 0", "8, 50", "9, -50"
  })
  void followsSpeechThatDriftsThroughPauses(long seed, double ppm) {
    Signal sent = speechWithPauses(seed);
    Signal ret = drifting(sent, ppm);
    Track track = new Tracker(0.5, 0.1).follow(sent, ret, share -> {});
    assertTrue(track.points().size() >= 4, track::toString);
    List<String> wrong = new ArrayList<>();
    look("track", track, wrong);
    look(
        "document",
        TrackDocument.of(
                "follow",
                track,
                TrackJudge.of(track, Optional.empty(), Optional.empty()),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                List.of())
            .json(),
        wrong);
    look("estimate", new DelayEstimator(0.1).estimate(sent, ret), wrong);
    assertEquals(List.of(), wrong);
  }

  /** A return that is the reference itself, sample for sample, leaves nothing at all. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 777})
  void aFlawlessCopyHasFiniteNumbers(int late) {
    Signal sent = ShowSound.speech(RATE, 2, new SplittableRandom(1));
    List<String> wrong = new ArrayList<>();
    Estimate estimate =
        new DelayEstimator(0.2).estimate(sent, sent.slice(-late, sent.length() + 4000));
    look("estimate", estimate, wrong);
    assertTrue(estimate instanceof Estimate.Found, estimate::toString);
    assertEquals(List.of(), wrong);
  }

  /** Names each number within records, lists, maps and optionals that is infinite or none. */
  private static void look(String where, Object value, List<String> wrong) {
    if (value instanceof Number number) {
      if (!Double.isFinite(number.doubleValue())) {
        wrong.add(where + " is " + number);
      }
    } else if (value instanceof OptionalDouble number) {
      number.ifPresent(inside -> look(where, inside, wrong));
    } else if (value instanceof Optional<?> optional) {
      optional.ifPresent(inside -> look(where, inside, wrong));
    } else if (value instanceof Iterable<?> list) {
      list.forEach(inside -> look(where, inside, wrong));
    } else if (value instanceof Map<?, ?> map) {
      map.forEach((key, inside) -> look(where + "." + key, inside, wrong));
    } else if (value instanceof Record) {
      for (RecordComponent part : value.getClass().getRecordComponents()) {
        look(where + "." + part.getName(), part(part, value), wrong);
      }
    }
  }

  private static Object part(RecordComponent component, Object of) {
    try {
      component.getAccessor().setAccessible(true);
      return component.getAccessor().invoke(of);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void recordsRefuseWhatIsNoNumber(double none) {
    Latency delay = new Latency(1, RATE);
    refused(() -> new TrackPoint(none, delay, 1));
    refused(() -> new TrackPoint(0, delay, none));
    refused(() -> new Step(none, 1, 2));
    refused(() -> new Step(0, none, 2));
    refused(() -> new Step(0, 1, none));
    refused(() -> new Band(none, 1, 1, 0, 0));
    refused(() -> new Band(1, none, 1, 0, 0));
    refused(() -> new Band(1, 1, none, 0, 0));
    refused(() -> new Band(1, 1, 1, none, 0));
    refused(() -> new Band(1, 1, 1, 0, none));
    refused(() -> new MissingSound(none, 1));
    refused(() -> new MissingSound(0, none));
    refused(() -> new Arrival(none, 0, Polarity.NORMAL));
    refused(() -> new Arrival(0, none, Polarity.NORMAL));
    refused(() -> new ClockDrift(none, 1));
    refused(() -> new ClockDrift(1, none));
    refused(() -> measurement(none, 0, 60));
    refused(() -> measurement(1, none, 60));
    refused(() -> measurement(1, 0, none));
  }

  @Test
  void anUncertaintyIsNeverNegative() {
    refused(() -> new ClockDrift(1, -1e-9));
    refused(() -> new Band(1, 1, -1e-9, 0, 0));
    refused(() -> new TrackPoint(0, new Latency(1, RATE), -1e-9));
    refused(() -> measurement(0, 0, 60));
  }

  private static Measurement measurement(double uncertainty, double levelDb, double ratioDb) {
    return new Measurement(
        new Latency(1, RATE),
        uncertainty,
        Optional.empty(),
        Optional.empty(),
        Polarity.NORMAL,
        levelDb,
        0,
        ratioDb,
        Method.REFERENCED,
        1,
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        false);
  }

  private static void refused(org.junit.jupiter.api.function.Executable made) {
    assertThrows(IllegalArgumentException.class, made);
  }
}
