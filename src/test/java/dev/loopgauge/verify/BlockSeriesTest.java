package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BlockSeriesTest {
  private static final double HALF_SAMPLE = 0.5 / Math.sqrt(3);

  /** What a display of one decimal leaves open: half of 0.1 ms is 2.4 samples, rectangular. */
  private static final double TENTH_OF_A_MS = 2.4 / Math.sqrt(3);

  private static SeriesReading reading(int blockSize, double samples, double uncertainty) {
    return new SeriesReading(
        blockSize,
        new Latency(samples, Rigs.RATE),
        uncertainty,
        OptionalDouble.empty(),
        OptionalInt.empty());
  }

  private static SeriesReading inMs(int blockSize, double ms) {
    return reading(blockSize, ms * 48, TENTH_OF_A_MS);
  }

  private static List<Integer> outliers(SeriesFit fit) {
    return fit.readings().stream()
        .filter(SeriesFit.Fitted::outlier)
        .map(fitted -> fitted.reading().blockSize())
        .toList();
  }

  /** Common practice, no source: what one rig read at 48 kHz. */
  @Test
  void oneRigIsTwoBlocksAndAFixedPart() {
    SeriesFit fit =
        BlockSeries.fit(List.of(inMs(32, 5.9), inMs(64, 7.2), inMs(128, 9.9), inMs(2048, 89.9)));
    assertEquals(2, fit.roundedBlocks());
    assertEquals(2, fit.blocks(), 0.002);
    assertEquals(4.56, fit.fixed().ms(), 0.01);
    assertEquals(List.of(), outliers(fit));
    assertEquals(List.of(), SeriesNotes.of(fit));
    assertEquals(13, fit.predictions().size());
    fit.predictions().forEach(p -> assertEquals(4.56 + p.blockSize() / 24.0, p.delay().ms(), 0.01));
  }

  @ParameterizedTest
  @CsvSource({"32, 9.5", "64, 12.7", "128, 7.9", "2048, 98.9", "2048, 8.99"})
  void oneMisreadValueStandsOutAndBendsNothing(int blockSize, double ms) {
    List<SeriesReading> readings = new ArrayList<>();
    for (SeriesReading good :
        List.of(inMs(32, 5.9), inMs(64, 7.2), inMs(128, 9.9), inMs(2048, 89.9))) {
      readings.add(good.blockSize() == blockSize ? inMs(blockSize, ms) : good);
    }
    readings.add(inMs(512, 25.9));
    SeriesFit fit = BlockSeries.fit(readings);
    assertEquals(List.of(blockSize), outliers(fit));
    assertEquals(2, fit.roundedBlocks());
    assertEquals(4.56, fit.fixed().ms(), 0.03);
    SeriesNote note = SeriesNotes.of(fit).get(0);
    assertEquals("outlier", note.code());
    assertTrue(note.text().contains("block of " + blockSize), note.text());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 22, 333, 4444})
  void findsEveryHostWithOneSpoiledReading(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 1000; i++) {
      int blocks = random.nextInt(6);
      double fixed = random.nextInt(1000) + random.nextDouble();
      List<SeriesReading> readings = readings(blocks, fixed, random);
      int spoiled = random.nextInt(readings.size());
      int size = readings.get(spoiled).blockSize();
      double right = readings.get(spoiled).delay().samples();
      double off = 15 + random.nextInt(500);
      double misread = off <= right && random.nextBoolean() ? right - off : right + off;
      readings.set(spoiled, reading(size, misread, HALF_SAMPLE));
      SeriesFit fit = BlockSeries.fit(readings);
      String trial = "seed " + seed + ", host " + i + ": " + readings;
      assertEquals(blocks, fit.roundedBlocks(), trial);
      assertEquals(fixed, fit.fixed().samples(), 1.5, trial);
      assertEquals(List.of(size), outliers(fit), trial);
    }
  }

  /** Of whole samples, at five to nine block sizes in random order. */
  private static List<SeriesReading> readings(int blocks, double fixed, Random random) {
    List<Integer> sizes = new ArrayList<>(BlockSizes.USUAL);
    Collections.shuffle(sizes, random);
    List<SeriesReading> readings = new ArrayList<>();
    for (int size : sizes.subList(0, 5 + random.nextInt(5))) {
      readings.add(reading(size, Math.rint(fixed + blocks * size), HALF_SAMPLE));
    }
    return readings;
  }

  @Test
  void theUncertaintyCoversTheTruth() {
    Random random = new Random(7);
    int covered = 0;
    for (int i = 0; i < 1000; i++) {
      List<SeriesReading> noisy = new ArrayList<>();
      for (int size : List.of(64, 128, 256, 512, 1024)) {
        noisy.add(reading(size, 300 + 1.5 * size + 3 * random.nextGaussian(), 3));
      }
      SeriesFit fit = BlockSeries.fit(noisy);
      covered += Math.abs(fit.blocks() - 1.5) <= fit.uncertaintyBlocks() ? 1 : 0;
    }
    assertTrue(covered >= 930, covered + " of 1000 covered (seed 7)");
  }

  @Test
  void readingsCountByTheirUncertainty() {
    SeriesFit fit =
        BlockSeries.fit(
            List.of(reading(64, 228, 0.3), reading(128, 360, 5), reading(256, 612, 0.3)));
    assertEquals(2, fit.blocks(), 1e-3);
    assertEquals(100, fit.fixed().samples(), 0.1);
  }

  /** The line stays straight, so only the number of blocks shows that the rate is wrong. */
  @Test
  void aWrongRateShowsAsBlocksThatAreNotWhole() {
    List<SeriesReading> readings = new ArrayList<>();
    for (int size : List.of(32, 64, 128, 512)) {
      readings.add(inMs(size, Math.rint((219 + 2 * size) / 44.1 * 10) / 10));
    }
    SeriesFit fit = BlockSeries.fit(readings);
    assertEquals(2 * 48 / 44.1, fit.blocks(), 0.01);
    assertFalse(fit.isWhole());
    assertEquals(List.of(), outliers(fit));
    SeriesNote note = SeriesNotes.of(fit).get(0);
    assertEquals("not-whole", note.code());
    assertTrue(note.text().contains("2 if the rig ran at 44100 Hz"), note.text());
  }

  @Test
  void twoSizesFitAnyLineAndItSaysSo() {
    SeriesFit fit = BlockSeries.fit(List.of(inMs(64, 7.2), inMs(128, 9.9)));
    assertEquals(2, fit.roundedBlocks());
    assertEquals(List.of("two-sizes"), codes(fit));
  }

  @Test
  void threeThatDisagreeAccuseNobody() {
    SeriesFit fit = BlockSeries.fit(List.of(inMs(64, 7.2), inMs(128, 19.9), inMs(256, 15.2)));
    assertEquals(List.of(), outliers(fit));
    assertTrue(codes(fit).contains("no-line"), codes(fit).toString());
  }

  @Test
  void sizesTooCloseTogetherLeaveTheBlocksOpen() {
    SeriesFit fit = BlockSeries.fit(List.of(inMs(60, 7.0), inMs(62, 7.1), inMs(64, 7.2)));
    assertTrue(codes(fit).contains("too-close"), codes(fit).toString());
  }

  @Test
  void aRigThatCannotBeIsCalledSo() {
    SeriesFit fit = BlockSeries.fit(List.of(inMs(64, 1), inMs(128, 9), inMs(256, 25)));
    assertTrue(codes(fit).contains("impossible"), codes(fit).toString());
  }

  private static List<String> codes(SeriesFit fit) {
    return SeriesNotes.of(fit).stream().map(SeriesNote::code).toList();
  }

  @Test
  void readingsOfOneSizeOrSeveralRatesAreRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> BlockSeries.fit(List.of(inMs(64, 7.2), inMs(64, 7.3))));
    SeriesReading other =
        new SeriesReading(
            128,
            new Latency(400, new SampleRate(44_100)),
            1,
            OptionalDouble.empty(),
            OptionalInt.empty());
    assertThrows(
        IllegalArgumentException.class, () -> BlockSeries.fit(List.of(inMs(64, 7.2), other)));
  }

  @Test
  void impossibleReadingsAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> reading(0, 1, 1));
    assertThrows(IllegalArgumentException.class, () -> reading(64, -1, 1));
    assertThrows(IllegalArgumentException.class, () -> reading(64, 1, 0));
  }
}
