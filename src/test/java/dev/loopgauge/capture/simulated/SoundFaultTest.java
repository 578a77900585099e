package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.filter.Complex;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SoundFaultTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int BLOCK = 64;
  private static final long SEED = 7;

  @Test
  void gainAndInversionScaleTheSound() {
    assertEquals(-12, Decibels.ofFactor(on("gain=-12", tone(1000))[11] / tone(1000)[11]), 1e-9);
    assertEquals(-tone(1000)[11], on("inverted", tone(1000))[11]);
    assertEquals(0, rms(on("silent", tone(1000))));
  }

  @ParameterizedTest
  @CsvSource({"noise=-30, -30", "hum=-20, -20"})
  void addsAsMuchAsItSays(String fault, double dbfs) {
    double[] added = on(fault, new double[RATE.hertz()]);
    assertEquals(dbfs, Decibels.ofFactor(rms(added)), 0.1, "seed " + SEED);
  }

  @Test
  void humRepeatsWithTheMains() {
    double[] hum = on("hum=-20", new double[RATE.hertz()]);
    assertArrayEquals(Arrays.copyOf(hum, 9_600), Arrays.copyOfRange(hum, 960, 960 + 9_600), 1e-9);
  }

  @Test
  void overloadCutsFlatTopsAtFullScale() {
    double[] driven = new Converter().on(on("clip=-6", tone(1000)), scene());
    long flat = Arrays.stream(driven).filter(x -> Math.abs(x) == 1).count();
    double share = 2 / Math.PI * Math.acos(Decibels.toFactor(-6));
    assertEquals(share, (double) flat / driven.length, 0.05);
  }

  @Test
  void overloadOfSilenceIsSilence() {
    assertEquals(0, rms(on("clip=-6", new double[100])));
  }

  @ParameterizedTest
  @ValueSource(ints = {3, -3, 100, -100})
  void aSkewMovesTheSoundEitherWay(int samples) {
    double[] click = new double[1_000];
    click[500] = 1;
    double[] moved = on("skew=" + samples, click);
    assertEquals(1, moved[500 + samples], 1e-12);
    assertEquals(0, moved[500], 1e-12);
  }

  @ParameterizedTest
  @ValueSource(strings = {"skew=101", "skew=-101"})
  void aSkewIsThatOfACard(String fault) {
    FaultFormatException refused =
        assertThrows(FaultFormatException.class, () -> FaultFormat.parse(fault));
    assertTrue(refused.getMessage().contains("must be -100 to 100 samples"));
  }

  @Test
  void secondArrivalComesAsLateAndLoudAsSaid() {
    double[] sound = new double[1_000];
    sound[100] = 1;
    double[] twice = on("second-arrival=2.5:-6", sound);
    assertEquals(1, twice[100], 1e-9);
    assertEquals(Decibels.toFactor(-6), twice[220], 1e-9);
    assertEquals(0, twice[160], 1e-9);
  }

  @Test
  void dropoutSilencesAMomentAndNothingElse() {
    double[] sound = tone(990);
    double[] interrupted = on("dropout=0.4:10", sound);
    assertEquals(0, rms(Arrays.copyOfRange(interrupted, 19_200, 19_680)));
    assertArrayEquals(Arrays.copyOf(sound, 19_200), Arrays.copyOf(interrupted, 19_200));
    assertArrayEquals(tail(sound, 19_680, 0), tail(interrupted, 19_680, 0));
  }

  @Test
  void lostBlockMakesTheRestOneBlockLater() {
    double[] sound = tone(990);
    double[] late = on("lost-block=0.4", sound);
    assertArrayEquals(Arrays.copyOf(sound, 19_200), Arrays.copyOf(late, 19_200));
    assertEquals(0, rms(Arrays.copyOfRange(late, 19_200, 19_200 + BLOCK)));
    assertArrayEquals(tail(sound, 19_200, BLOCK), tail(late, 19_200 + BLOCK, 0));
  }

  @ParameterizedTest
  @ValueSource(strings = {"dropout=500", "lost-block=500", "stutters=500"})
  void lossesAfterTheTakeChangeNothing(String fault) {
    assertArrayEquals(tone(990), on(fault, tone(990)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, -50, 300, 1000, 3000, -3000})
  void driftStretchesTheSoundByItsPpm(double ppm) {
    double[] drifting = new ClockFault(ppm).on(tone(990), scene());
    for (int i = 1_000; i < 40_000; i += 37) {
      double expected = Math.sin(2 * Math.PI * 990 / 48_000 * i / (1 + ppm * 1e-6));
      assertEquals(expected, drifting[i], 1e-5);
    }
  }

  @Test
  void wrongSpeedPlaysATakeOf48KhzAt44Khz1() {
    double[] wrong = on("wrong-speed=44100", tone(990));
    for (int i = 1_000; i < 40_000; i += 37) {
      assertEquals(Math.sin(2 * Math.PI * 990 / 44_100 * i), wrong[i], 1e-5);
    }
  }

  /** Expected: 1 / (1 + (tan(pi f / rate) / tan(pi edge / rate))^4), derived. */
  @ParameterizedTest
  @CsvSource({"900, 0", "200, -6.02", "4000, -6.02", "50, -48.2", "12000, -45.8"})
  void bandLimitFallsBeyondItsEdges(double hertz, double db) {
    double[] band = middle(on("band-limit=200-4000", tone(hertz)));
    assertEquals(db, Decibels.ofFactor(rms(band) / rms(middle(tone(hertz)))), 0.1);
  }

  @Test
  void bandLimitAddsNoDelay() {
    double[] sound = new double[48_000];
    sound[24_000] = 1;
    double[] band = on("band-limit=200-4000", sound);
    for (int i = 1; i < 2_000; i++) {
      assertEquals(band[24_000 - i], band[24_000 + i], 1e-9);
    }
  }

  /** Expected: the filter's response at the tone, once it has settled. */
  @ParameterizedTest
  @ValueSource(strings = {"high-pass=300:3", "crossover-low=500", "all-pass=990", "telephone"})
  void aFilterDoesToAToneWhatItsResponseSays(String fault) {
    Filtered filtered = (Filtered) FaultFormat.parse(fault);
    Complex response = filtered.design().at(RATE).response(990.0 / 48_000);
    double[] heard = on(fault, tone(990));
    for (int i = 24_000; i < 40_000; i += 37) {
      double angle = 2 * Math.PI * 990 / 48_000 * i + response.phase();
      assertEquals(response.magnitude() * Math.sin(angle), heard[i], 1e-9);
    }
  }

  /** Expected: the copy 15 ms later on average, 3 ms more a quarter of a swing into the take. */
  @Test
  void theChorussCopySwingsInTime() {
    double[] sound = new double[48_000];
    sound[24_000 - 18 * 48] = 1;
    sound[40_000] = 1;
    double[] heard = on("chorus=0.5:3", sound);
    assertEquals(1, heard[40_000], 1e-9);
    assertEquals(Decibels.toFactor(-6), heard[24_000], 1e-6);
    assertEquals(0, rms(Arrays.copyOfRange(heard, 40_100, 40_000 + 12 * 48)), 1e-4);
    double[] copy = Arrays.copyOfRange(heard, 40_000 + 12 * 48, 40_000 + 18 * 48);
    assertTrue(Arrays.stream(copy).map(Math::abs).max().orElse(0) > 0.3);
  }

  /** Expected: of 18 dB above the threshold a quarter is left. */
  @Test
  void aCompressorLeavesAQuarterAboveItsThresholdAtFourToOne() {
    double[] steady = new double[48_000];
    Arrays.fill(steady, Decibels.toFactor(-12));
    double[] heard = on("compressor=-30:4", steady);
    assertEquals(-12, Decibels.ofFactor(heard[0]), 0.1);
    assertEquals(-30 + 18 / 4.0, Decibels.ofFactor(heard[47_999]), 1e-6);
  }

  /** Expected: all but 1 / e of the change after 5 ms, a time constant (by its definition). */
  @Test
  void aCompressorClosesWithinItsAttackAndOpensWithinItsRelease() {
    double[] steps = new double[48_000];
    Arrays.fill(steps, 0, 24_000, Decibels.toFactor(-12));
    Arrays.fill(steps, 24_000, 48_000, Decibels.toFactor(-50));
    double[] heard = on("compressor=-30:4:5:100", steps);
    double down = 18 * 0.75;
    assertEquals(-12 - down * (1 - Math.exp(-1)), Decibels.ofFactor(heard[239]), 0.01);
    assertEquals(-50 - down * Math.exp(-1), Decibels.ofFactor(heard[24_000 + 4_799]), 0.01);
  }

  @Test
  void aCompressorLeavesWhatIsQuieterThanItsThreshold() {
    double[] quiet = new double[4_800];
    Arrays.fill(quiet, Decibels.toFactor(-31));
    assertArrayEquals(quiet, on("compressor=-30:4", quiet), 1e-15);
  }

  @Test
  void eachStutterPlaysTheBlockBeforeAgain() {
    double[] sound = tone(990);
    double[] heard = on("stutters=0.3:0.5", sound);
    double[] expected = sound.clone();
    System.arraycopy(sound, 14_400 - BLOCK, expected, 14_400, BLOCK);
    System.arraycopy(sound, 24_000 - BLOCK, expected, 24_000, BLOCK);
    assertArrayEquals(expected, heard);
  }

  @Test
  void aStutterAtTheStartPlaysSilence() {
    double[] heard = on("stutters=0", tone(990));
    assertEquals(0, rms(Arrays.copyOf(heard, BLOCK)));
    assertArrayEquals(tail(tone(990), BLOCK, 0), tail(heard, BLOCK, 0));
  }

  @Test
  void wrongSignalKeepsNothingOfTheSound() {
    double[] sound = tone(990);
    double[] other = on("wrong-signal", sound);
    assertArrayEquals(on("wrong-signal", new double[sound.length]), other);
    assertEquals(-20, Decibels.ofFactor(rms(other)), 3, "seed " + SEED);
  }

  @Test
  void feedbackGrowsOnlyWhereNothingPlays() {
    double[] howling = on("feedback", new double[48_000]);
    assertEquals(0, rms(Arrays.copyOf(howling, 24_000)));
    double early = rms(Arrays.copyOfRange(howling, 24_000, 26_400));
    double late = rms(Arrays.copyOfRange(howling, 36_000, 38_400));
    assertEquals(20, Decibels.ofFactor(late / early), 0.1);
  }

  @Test
  void everyFaultLeavesItsInputAlone() {
    for (String fault :
        List.of(
            "gain=3",
            "noise=-30",
            "hum=-30",
            "dropout=0.1",
            "feedback",
            "crossover-sum=80:2",
            "chorus=1:1",
            "compressor=-30:4",
            "stutters=0.1")) {
      double[] sound = tone(990);
      on(fault, sound);
      assertArrayEquals(tone(990), sound, fault);
    }
  }

  private static double[] on(String fault, double[] sound) {
    return ((SoundFault) FaultFormat.parse(fault)).on(sound, scene());
  }

  private static Scene scene() {
    List<Take.Segment> listening = List.of(new Take.Segment(24_000, 48_000));
    return new Scene(RATE, BLOCK, listening, new SplittableRandom(SEED));
  }

  private static double[] tone(double hertz) {
    double[] tone = new double[48_000];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = Math.sin(2 * Math.PI * hertz / 48_000 * i);
    }
    return tone;
  }

  private static double[] middle(double[] sound) {
    return Arrays.copyOfRange(sound, 12_000, 36_000);
  }

  private static double[] tail(double[] sound, int from, int without) {
    return Arrays.copyOfRange(sound, from, sound.length - without);
  }

  private static double rms(double[] sound) {
    return Signal.of(RATE, sound).rms();
  }
}
