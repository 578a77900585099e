package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.estimate.integrity.LostSound.Gap;
import dev.loopgauge.estimate.integrity.LostSound.Heard;
import dev.loopgauge.stats.Odds;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Sound is lost where the return holds none of it beyond doubt, between sound; and nowhere else.
 */
class GapSearchTest {
  private static final int SAMPLES = 48;
  private static final int COUNT = 400;
  private static final int FROM = 200;

  /** Pieces in which the sound is of energy 1 and the noise of another, as it is expected. */
  private static List<Heard> pieces(double noise) {
    return new ArrayList<>(IntStream.range(0, COUNT).mapToObj(i -> piece(i, 1, 1, noise)).toList());
  }

  /** A piece in which the sound that was due, of energy 1, has a gain, beside noise. */
  private static Heard piece(int at, double sent, double gain, double noise) {
    double left = (1 - gain) * (1 - gain) + noise;
    return new Heard(SAMPLES * at, sent, 1, gain, gain * gain + noise, left, 1, 0);
  }

  private static void set(List<Heard> pieces, int count, double sent, double gain, double noise) {
    for (int i = FROM; i < FROM + count; i++) {
      pieces.set(i, piece(i, sent, gain, noise));
    }
  }

  private static List<Gap> gaps(List<Heard> pieces) {
    return new GapSearch(pieces, SAMPLES).gaps();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 50})
  void soundThatIsGoneIsToldToAPiece(int count) {
    List<Heard> pieces = pieces(1e-4);
    set(pieces, count, 1, 0, 1e-4);
    assertEquals(List.of(new Gap(FROM * SAMPLES, count * SAMPLES)), gaps(pieces));
  }

  @Test
  void soundThatStaysLacksNothing() {
    assertEquals(List.of(), gaps(pieces(1e-4)));
    assertEquals(List.of(), gaps(pieces(0.3)));
    assertEquals(List.of(), gaps(List.of(piece(0, 1, 1, 0))));
  }

  /** In noise each piece adds 1 / 2v: so many are asked for that they leave no doubt, no fewer. */
  @Test
  void asManyPiecesAreToldAsLeaveNoDoubt() {
    double noise = 0.1;
    double asked = Odds.BEYOND_DOUBT + Math.log(COUNT * (COUNT + 1) / 2.0);
    int enough = (int) Math.ceil(asked * 2 * noise);
    List<Heard> pieces = pieces(noise);
    set(pieces, enough - 1, 1, 0, noise);
    assertEquals(List.of(), gaps(pieces));
    set(pieces, enough, 1, 0, noise);
    assertEquals(1, gaps(pieces).size());
  }

  /** A level that moves is heard beside the noise, however long; one that noise covers is lost. */
  @ParameterizedTest
  @CsvSource({"0.3, 0", "0.1, 0", "0.01, 1"})
  void quietSoundIsNotLost(double gain, int told) {
    List<Heard> pieces = pieces(1e-4);
    set(pieces, 50, 1, gain, 1e-4);
    assertEquals(told, gaps(pieces).size());
  }

  @Test
  void whatTheFitAloneRingsWithIsNotLost() {
    List<Heard> pieces = pieces(1e-4);
    set(pieces, 50, 0, 0, 1e-4);
    assertEquals(List.of(), gaps(pieces));
  }

  @Test
  void otherSoundInsteadIsNoSilence() {
    List<Heard> pieces = pieces(1e-4);
    set(pieces, 50, 1, 0, 1);
    assertEquals(List.of(), gaps(pieces));
  }

  /** Before a sound starts and after it ends nothing is lost. */
  @Test
  void nothingIsLostWhereNoSoundIsHeardBeforeOrAfter() {
    List<Heard> pieces = pieces(1e-4);
    set(pieces, 50, 1, 0, 1e-4);
    assertEquals(List.of(), gaps(pieces.subList(FROM, COUNT)));
    assertEquals(List.of(), gaps(pieces.subList(0, FROM + 50)));
  }

  /** Sound as faint as what is usually left tells nothing, since the fit's own rings so. */
  @Test
  void faintSoundTellsNothing() {
    List<Heard> pieces = new ArrayList<>();
    for (int i = 0; i < COUNT; i++) {
      boolean faint = i >= FROM && i < FROM + 100;
      pieces.add(
          new Heard(SAMPLES * i, 1, faint ? 1 : 100, faint ? 0 : 100, faint ? 0 : 100, 1, 1, 0));
    }
    assertEquals(List.of(), gaps(pieces));
  }
}
