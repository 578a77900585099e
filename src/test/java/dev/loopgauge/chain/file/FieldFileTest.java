package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainFiles;
import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.ExpectedLevel;
import dev.loopgauge.chain.FrameRate;
import dev.loopgauge.chain.HostSettings;
import dev.loopgauge.chain.Loudspeaker;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.chain.Position;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a chain file may say of several computers, of places and of patches. */
class FieldFileTest {
  private static final String SMALL =
      "sample-rate: 48000\nstages: { a: { ms: 1 } }\npaths: { p: { listener: house, stages: [a] } }\n";

  private final Chain field = ChainFiles.field();

  @Test
  void readsHostsAndTheStagesOnThem() {
    assertEquals(
        Map.of(
            "truck",
            new HostSettings("truck", OptionalInt.of(256), Optional.of(new SampleRate(96_000)))),
        field.hosts());
    assertEquals(Optional.of("truck"), field.stages().get("truck-in").host());
    assertEquals(Optional.empty(), field.stages().get("desk").host());
  }

  @Test
  void readsWhereThingsArePluggedIn() {
    assertEquals(Optional.of(new Patch(1, 1, OptionalInt.empty())), field.reference());
    assertEquals(
        Optional.of(new Patch(2, 2, OptionalInt.empty())), field.path("vocal-house").patch());
    assertEquals(Optional.of(new Patch(3, 5, OptionalInt.of(4))), field.path("truck-mix").patch());
    assertEquals(Optional.empty(), field.path("vocal-tower").patch());
  }

  @Test
  void groupsStandForTheirStages() {
    assertEquals(
        List.of("box-in", "desk", "host-blocks", "box-out"), field.path("vocal-house").stages());
    Chain looped =
        ChainFiles.parsed(
            ChainFiles.FIELD.replace(
                "stages: [in, host-blocks, box-out]",
                "stages: [in, host-blocks, box-out]\n    loop: [in, box-out]"));
    assertEquals(
        Optional.of(List.of("box-in", "desk", "box-out")), looped.path("vocal-house").loop());
  }

  @Test
  void inputLeftOutIsTheFirstStageOfAGroup() {
    Chain chain = ChainFiles.parsed(ChainFiles.FIELD.replace("    input: vocal\n", ""));
    assertEquals("box-in", chain.path("vocal-house").input());
  }

  @Test
  void readsPositionsAndWhichOfThemHearAPath() {
    assertEquals(
        new Position("tower", OptionalDouble.of(70), Map.of("main-pa", 68.0, "tower-pa", 8.0)),
        field.positions().get("tower"));
    assertEquals(
        Optional.of(new Loudspeaker("main-pa", List.of("row-a", "tower"))),
        field.path("vocal-house").loudspeaker());
    assertEquals(
        Optional.of(new Loudspeaker("tower-pa", List.of("tower"))),
        field.path("vocal-tower").loudspeaker());
  }

  @Test
  void readsFeetOfPositions() {
    Chain chain =
        ChainFiles.parsed(SMALL + "positions: { x: { direct-feet: 10, throw-feet: { pa: 100 } } }");
    Position x = chain.positions().get("x");
    assertEquals(3.048, x.directMetres().orElseThrow(), 1e-12);
    assertEquals(30.48, x.throwMetres().get("pa"), 1e-12);
  }

  @Test
  void readsWhatIsExpectedOfAReturn() {
    assertEquals(
        new Expectation(
            Optional.of(false), Optional.of(new ExpectedLevel(-6, 1)), OptionalDouble.of(3)),
        field.path("vocal-house").expected());
    assertEquals(Expectation.NONE, field.path("truck-mix").expected());
    Chain inverted =
        ChainFiles.parsed(SMALL.replace("[a] }", "[a], expect: { polarity: inverted } }"));
    assertEquals(Optional.of(true), inverted.path("p").expected().inverted());
  }

  @Test
  void levelWithoutToleranceMayBeOffByOneDb() {
    Chain chain = ChainFiles.parsed(SMALL.replace("[a] }", "[a], expect: { level-db: -6 } }"));
    assertEquals(Optional.of(new ExpectedLevel(-6, 1)), chain.path("p").expected().level());
  }

  @ParameterizedTest
  @CsvSource({
    "23.976, 24000/1001",
    "23.98, 24000/1001",
    "29.97, 30000/1001",
    "59.94, 60000/1001",
    "119.88, 120000/1001"
  })
  void readsFrameRatesAsTheTradeWritesThem(String written, String meant) {
    Chain chain =
        ChainFiles.parsed(SMALL + "pictures: { c: { frame-rate: " + written + ", frames: 1 } }");
    assertEquals(
        meant, chain.pictures().get("c").frameRate().map(FrameRate::toString).orElseThrow());
  }

  @Test
  void blockSizeThatNoDriverOffersIsNoticed() {
    Chain chain = ChainFiles.parsed(SMALL.replaceFirst("stages:", "block-size: 63\nstages:"));
    assertEquals(63, chain.blockSize());
    assertEquals("rig.yaml:2:13: block-size 63 is unusual", chain.notices().get(0).text());
    assertEquals("did you mean 64?", chain.notices().get(0).hint());
    Chain host = ChainFiles.parsed(ChainFiles.FIELD.replace("block-size: 256", "block-size: 255"));
    assertEquals("did you mean 256?", host.notices().get(0).hint());
  }

  @ParameterizedTest
  @CsvSource({"64", "48", "192", "480", "1024", "65536"})
  void blockSizeThatDriversOfferIsNot(int size) {
    Chain chain =
        ChainFiles.parsed(SMALL.replaceFirst("stages:", "block-size: " + size + "\nstages:"));
    assertTrue(chain.notices().isEmpty());
  }
}
