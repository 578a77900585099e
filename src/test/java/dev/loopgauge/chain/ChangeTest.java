package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.file.ChangeFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChangeTest {
  private static final Chain THEATRE = ChainFiles.theatre();

  private static double delay(Chain chain, String path) {
    return ChainFiles.budget(chain, path).delay().samples();
  }

  private static double loop(Chain chain, String path) {
    return ChainFiles.budget(chain, path).loop().samples();
  }

  /** The whole path is 648.4 samples as stated. */
  @ParameterizedTest
  @CsvSource({
    "block-size=256, 1032.4",
    "absent=limiter, 408.4",
    "twice=limiter, 888.4",
    "extra-block=host-blocks, 712.4",
    "extra-block=host-blocks:2, 776.4",
    "fewer-blocks=host-blocks, 584.4",
    "not-compensated=limiter, 888.4",
    "sample-rate=96000, 686.8"
  })
  void movesTheDelayByWhatItChanges(String change, double samples) {
    assertEquals(648.4, delay(THEATRE, "vocal-house"), 1e-9);
    assertEquals(samples, delay(ChangeFormat.parse(change).on(THEATRE), "vocal-house"), 1e-9);
  }

  @Test
  void whatIsReportedComesOnTopOfPathsWithoutTheStageToo() {
    Chain chain = ChangeFormat.parse("not-compensated=limiter").on(THEATRE);
    assertEquals(240, delay(chain, "vocal-in-ear") - delay(THEATRE, "vocal-in-ear"), 1e-9);
    assertEquals(240, loop(chain, "field-tower") - loop(THEATRE, "field-tower"), 1e-9);
  }

  @Test
  void aDistanceReplacesMetresAndFeetAlike() {
    Chain chain = ChangeFormat.parse("distance=delay-tower:34.32").on(THEATRE);
    double stated = 30.48 / 343.2 * 48_000;
    assertEquals(4800 - stated, delay(chain, "field-tower") - delay(THEATRE, "field-tower"), 1e-9);
  }

  @Test
  void listedLoopsChangeWithTheirPaths() {
    Chain chain = ChangeFormat.parse("twice=console").on(THEATRE);
    assertEquals(38.4, loop(chain, "field-tower") - loop(THEATRE, "field-tower"), 1e-9);
    Chain without = ChangeFormat.parse("absent=console").on(THEATRE);
    assertEquals(0, loop(without, "field-tower"), 1e-9);
  }

  @Test
  void anAbsentStageIsStillShownWhereItWas() {
    Chain chain = ChangeFormat.parse("absent=limiter").on(THEATRE);
    List<StageDelay> stages = ChainFiles.budget(chain, "vocal-house").stages();
    assertEquals("limiter (absent)", stages.get(4).name());
    assertEquals(0, stages.get(4).toleranceSamples());
  }

  @Test
  void oneOfTwoPassesIsAbsent() {
    Chain twice = ChangeFormat.parse("twice=limiter").on(THEATRE);
    assertEquals(648.4, delay(ChangeFormat.parse("absent=limiter").on(twice), "vocal-house"), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "block-size=256",
        "sample-rate=44100",
        "absent=limiter",
        "twice=limiter",
        "extra-block=host-blocks",
        "fewer-blocks=host-blocks:2",
        "not-compensated=limiter",
        "distance=wedge-throw:2.5"
      })
  void writesItselfAsItWasRead(String text) {
    Change change = ChangeFormat.parse(text);
    assertEquals(text, change.written());
    assertTrue(change.told(THEATRE).length() > 10 && change.check().length() > 10);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "blocksize=256 | did you mean block-size=256?",
        "colour=red | the changes are block-size=128, sample-rate=44100, absent=STAGE",
        "absent | write, for example, absent=STAGE",
        "absent= | write, for example, absent=STAGE",
        "block-size=big | write, for example, block-size=128",
        "block-size=0 | write, for example, block-size=128",
        "block-size=1.5 | write, for example, block-size=128",
        "sample-rate=48 | write, for example, sample-rate=44100",
        "extra-block=host-blocks:0 | write, for example, extra-block=STAGE",
        "distance=wedge-throw | write, for example, distance=STAGE:METRES",
        "blocksize | did you mean block-size=128?",
        "distance=wedge-throw:-1 | write, for example, distance=STAGE:METRES",
        "air-temperature=60 | write, for example, air-temperature=4",
        "host.truck.block-size | write, for example, host.NAME.block-size=128",
        "host.truck.block-size=0 | write, for example, host.NAME.block-size=128",
        "host.truck.colour=1 | host.NAME.block-size=128",
        "host.block-size=64 | host.NAME.block-size=128",
        "position.tower.direct-metres=-1 | for example, position.NAME.direct-metres=60",
        "position.tower.throw-metres.main-pa= | position.NAME.throw-metres.LOUDSPEAKER=58",
        "position.tower.height=2 | position.NAME.direct-metres=60"
      })
  void whatIsNoChangeIsRefusedWithAnExample(String text, String hint) {
    ChangeFormatException refused =
        assertThrows(ChangeFormatException.class, () -> ChangeFormat.parse(text));
    assertTrue(refused.hint().contains(hint), refused.hint());
    assertTrue(!refused.getMessage().contains("\n"), refused.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "absent=limitr | 'limiter' is the nearest known name",
        "absent=camera | name a stage that a path lists",
        "twice=camera | name a stage that a path lists",
        "extra-block=console | name one that the chain file states in blocks",
        "fewer-blocks=host-blocks:3 | name another stage that is stated in blocks",
        "not-compensated=console | say in the chain file who reports its delay",
        "distance=console:2 | name a stage that is air"
      })
  void whatTheChainCannotChangeIsRefused(String text, String hint) {
    Change change = ChangeFormat.parse(text);
    ChangeFormatException refused =
        assertThrows(ChangeFormatException.class, () -> change.on(THEATRE));
    assertEquals(hint, refused.hint());
  }
}
