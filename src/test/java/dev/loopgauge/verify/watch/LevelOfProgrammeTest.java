package dev.loopgauge.verify.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dev.loopgauge.estimate.result.SentLevel;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A level that goes by the programme is no event, a fader is. */
class LevelOfProgrammeTest {
  private static final int SECTION = 15;

  private final SplittableRandom random = new SplittableRandom(20_261_130);

  /** Three to one above -30 dBFS. */
  private static double compressed(double dbfs) {
    return -6 - 2.0 / 3 * Math.max(0, dbfs + 30);
  }

  /** Sections between -40 and -20 dBFS; windows of 2 s of each lie within 1 dB, as of music. */
  private Windows sections(int count, DoubleUnaryOperator path, int faderAt, double faderDb) {
    Windows windows = new Windows();
    for (int section = 0; section < count; section++) {
      double loud = -39 + 18 * random.nextDouble();
      for (int i = 0; i < SECTION; i++) {
        double now = loud + 2 * random.nextDouble() - 1;
        SentLevel sent =
            new SentLevel(now, now + 3 + random.nextDouble(), now + 12 + 3 * random.nextDouble());
        double fader = SECTION * section + i < faderAt ? 0 : faderDb;
        windows.readOf(sent, path.applyAsDouble(now) + fader + 0.05 * random.nextGaussian());
      }
    }
    return windows;
  }

  @Test
  void tellsNothingOfACompressor() {
    for (int show = 0; show < 20; show++) {
      Windows windows = sections(20, LevelOfProgrammeTest::compressed, Integer.MAX_VALUE, 0);
      assertEquals(List.of(), windows.events());
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-2, 3, -6, 6})
  void tellsAFaderThroughAllProgramme(double db) {
    assertTold(db, sections(14, dbfs -> -6, 7 * SECTION + 4, db));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-6, 6, 10})
  void tellsAFaderBesideACompressor(double db) {
    assertTold(db, sections(14, LevelOfProgrammeTest::compressed, 7 * SECTION + 4, db));
  }

  /** A fader that is moved as louder programme begins is told once there is softer one. */
  private static void assertTold(double db, Windows windows) {
    assertEquals(1, windows.events().size(), windows.events()::toString);
    WatchEvent.Level level = assertInstanceOf(WatchEvent.Level.class, windows.events().get(0));
    assertEquals(db, level.changeDb(), level.uncertaintyDb());
    assertEquals(7 * SECTION + 4, level.atSeconds(), SECTION + Windows.LENGTH);
  }

  /** What gets louder may be turned down by as much, and the other way round. */
  @ParameterizedTest
  @CsvSource({
    "3, -3.8, 0",
    "3, -4.3, 1",
    "-3, 3.8, 0",
    "-3, 4.3, 1",
    "3, 0.8, 0",
    "3, 1.3, 1",
    "-3, -1.3, 1"
  })
  void aLevelChangesByADecibelBeyondTheProgramme(double louderDb, double changeDb, int told) {
    Windows windows = new Windows();
    for (int i = 0; i < 20; i++) {
      windows.readOf(SentLevel.even(-20), -6);
    }
    for (int i = 0; i < 8; i++) {
      windows.readOf(SentLevel.even(-20 + louderDb), -6 + changeDb);
    }
    assertEquals(told, windows.events().size(), windows.events()::toString);
  }

  /** Whatever a compressor goes by: each measure alone explains as much. */
  @Test
  void eachMeasureOfLoudnessExplains() {
    for (SentLevel louder :
        List.of(
            new SentLevel(-17, -20, -20),
            new SentLevel(-20, -17, -20),
            new SentLevel(-20, -20, -17))) {
      Windows windows = new Windows();
      for (int i = 0; i < 20; i++) {
        windows.readOf(SentLevel.even(-20), -6);
      }
      for (int i = 0; i < 20; i++) {
        windows.readOf(louder, -8.5);
      }
      assertEquals(List.of(), windows.events());
    }
  }
}
