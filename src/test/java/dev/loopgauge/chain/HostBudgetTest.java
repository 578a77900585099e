package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.chain.file.ChangeFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Budgets over computers with settings of their own: derived by hand, see each test. */
class HostBudgetTest {
  private final Chain field = ChainFiles.field();

  /** 12 + 38.4 at 48 kHz; 96 at 96 kHz are 48 here; two blocks of 256 at 96 kHz are 256 here. */
  @Test
  void stagesCountAtTheirHostAndAreToldAtTheRateOfTheFile() {
    PathBudget budget = ChainFiles.budget(field, "truck-mix");
    assertEquals(48, budget.stages().get(2).delay().samples(), 1e-9);
    assertEquals(256, budget.stages().get(3).delay().samples(), 1e-9);
    assertEquals(12 + 38.4 + 48 + 256, budget.delay().samples(), 1e-9);
    assertEquals(48_000, budget.delay().rate().hertz());
    assertEquals(2, budget.toleranceSamples(), 1e-9);
  }

  /** Milliseconds stay milliseconds at any host. */
  @Test
  void timesDontDependOnTheHost() {
    Chain chain =
        ChainFiles.parsed(ChainFiles.FIELD.replace("{ samples: 96, host", "{ ms: 1, host"));
    assertEquals(48, ChainFiles.budget(chain, "truck-mix").stages().get(2).delay().samples(), 1e-9);
  }

  /** As stated 354.4; blocks of 128 are half; at 48 kHz samples and blocks last twice as long. */
  @ParameterizedTest
  @CsvSource({
    "host.truck.block-size=128,   226.4",
    "host.truck.sample-rate=48000, 658.4",
    "block-size=256,              354.4",
    "sample-rate=96000,           696.8"
  })
  void whatIfsMoveTheHostTheyName(String change, double samples) {
    Chain changed = ChangeFormat.parse(change).on(field);
    assertEquals(samples, ChainFiles.budget(changed, "truck-mix").delay().samples(), 1e-9);
  }

  @Test
  void hostWithoutARateOfItsOwnRunsAtThatOfTheRig() {
    Chain chain = ChainFiles.parsed(ChainFiles.FIELD.replace(", sample-rate: 96000 }", " }"));
    assertEquals(12 + 38.4 + 96 + 512, ChainFiles.budget(chain, "truck-mix").delay().samples());
    Chain faster = ChangeFormat.parse("sample-rate=96000").on(chain);
    assertEquals(12 + 76.8 + 96 + 512, ChainFiles.budget(faster, "truck-mix").delay().samples());
  }

  @Test
  void blocksOnAHostNeedNoBlockSizeOfTheRig() {
    Chain chain =
        ChainFiles.parsed(
            ChainFiles.FIELD.replace("block-size: 64\n", "").replace("{ blocks: 2 }", "{ ms: 2 }"));
    assertEquals(354.4, ChainFiles.budget(chain, "truck-mix").delay().samples(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "host.trukc.block-size=128 | 'truck' is the nearest known name",
        "position.towr.direct-metres=3 | 'tower' is the nearest known name",
        "position.row-a.throw-metres.main-pb=3 | 'main-pa' is the nearest known name"
      })
  void whatTheChainDoesNotHaveIsRefused(String text, String hint) {
    Change change = ChangeFormat.parse(text);
    assertEquals(hint, assertThrows(ChangeFormatException.class, () -> change.on(field)).hint());
  }

  @ParameterizedTest
  @CsvSource({
    "host.truck.block-size=128",
    "host.truck.sample-rate=48000",
    "air-temperature=4",
    "position.tower.direct-metres=60",
    "position.row-a.throw-metres.front-fill=2.75"
  })
  void writesItselfAsItWasRead(String text) {
    Change change = ChangeFormat.parse(text);
    assertEquals(text, change.written());
    change.on(field);
  }

  @Test
  void tellsWhatChanged() {
    assertEquals(
        "'truck' runs at a block of 128 samples, not 256",
        ChangeFormat.parse("host.truck.block-size=128").told(field));
    assertEquals(
        "'truck' runs at 48000 Hz, not 96000",
        ChangeFormat.parse("host.truck.sample-rate=48000").told(field));
    assertEquals(
        "'tower' is 60 m from the source, not 70",
        ChangeFormat.parse("position.tower.direct-metres=60").told(field));
    assertEquals(
        "'row-a' is 10 m from 'main-pa', not 12",
        ChangeFormat.parse("position.row-a.throw-metres.main-pa=10").told(field));
    assertEquals(
        "the air is at 4 degrees C, not 20", ChangeFormat.parse("air-temperature=4").told(field));
  }
}
