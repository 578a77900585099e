package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** All paths of a file in one rig. */
final class WiringTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /** 30, 158 and 94 samples; the wedge has no patch. */
  private static final String CHAIN =
      """
      chain: Brook Hall
      sample-rate: 48000
      block-size: 64
      reference: { send: 7, return: 8 }
      stages:
        desk: { samples: 30 }
        blocks: { blocks: 2 }
        box: { samples: 64 }
      paths:
        ears: { listener: in-ear, stages: [desk], patch: { send: 2, return: 3 } }
        house: { listener: house, stages: [desk, blocks], patch: { send: 2, return: 4 } }
        stream: { listener: stream, stages: [desk, box], patch: { send: 5, return: 5, against: 6 } }
        wedge: { listener: wedge, stages: [box] }
      """;

  @Test
  void eachPathIsOnItsOwnReturnAndPathsMayShareASend() {
    Wiring wiring = all();
    assertEquals(List.of("7 0"), into(wiring, 8));
    assertEquals(List.of("2 30"), into(wiring, 3));
    assertEquals(List.of("2 158"), into(wiring, 4));
    assertEquals(List.of("5 94"), into(wiring, 5));
    assertEquals(List.of(), into(wiring, 2));
  }

  @Test
  void aReturnToMeasureAgainstHearsThePathsOwnSend() {
    assertEquals(List.of("5 0"), into(all(), 6));
  }

  @Test
  void thePathMeasuredWithoutAPatchIsWhereTheCommandNamesIt() {
    Chain chain = chain();
    Patch named = new Patch(9, 10, OptionalInt.empty());
    Plugs plugs = Plugs.measuring(chain, chain.path("wedge"), Optional.of(named));
    Wiring wiring = new Wiring(chain, plugs, List.of(), RATE);
    assertEquals(List.of("9 64"), into(wiring, 10));
    assertEquals(List.of("2 158"), into(wiring, 4));
    assertEquals(9, plugs.sends());
    assertEquals(10, plugs.returns());
  }

  @Test
  void thePathMeasuredIsAloneOnItsReturn() {
    Chain chain = chain();
    Patch taken = new Patch(9, 3, OptionalInt.empty());
    Plugs plugs = Plugs.measuring(chain, chain.path("wedge"), Optional.of(taken));
    assertEquals(List.of("9 64"), into(new Wiring(chain, plugs, List.of(), RATE), 3));
  }

  @Test
  void aFaultOfOnePathLeavesTheOthersAlone() {
    Wiring wiring = all("house:block-size=128", "stream:inverted");
    assertEquals(List.of("2 286"), into(wiring, 4));
    assertEquals(List.of("2 30"), into(wiring, 3));
    assertEquals(List.of(new Inverted()), wiring.into(5).get(0).rig().heard());
    assertEquals(List.of(), wiring.into(4).get(0).rig().heard());
  }

  @Test
  void withoutAPathEachHasTheFaultThatCan() {
    Wiring wiring = all("absent=blocks", "gain=-12");
    assertEquals(List.of("2 30"), into(wiring, 4));
    assertEquals(List.of("2 30"), into(wiring, 3));
    Stream.of(3, 4, 5)
        .forEach(
            channel ->
                assertEquals(List.of(new Gain(-12)), wiring.into(channel).get(0).rig().heard()));
  }

  @Test
  void aStageThatNoPathHasIsRefused() {
    assertThrows(FaultFormatException.class, () -> all("absent=compressor"));
    assertThrows(FaultFormatException.class, () -> all("ears:absent=blocks"));
  }

  @Test
  void swappedReturnsHearEachOther() {
    Wiring wiring = all("ears:swapped=stream");
    assertEquals(List.of("5 94"), into(wiring, 3));
    assertEquals(List.of("2 30"), into(wiring, 5));
    assertEquals(List.of("2 158"), into(wiring, 4));
  }

  @Test
  void crosstalkIsHeardBesideThePathItself() {
    Wiring wiring = all("ears:crosstalk=stream:-20");
    assertEquals(List.of("2 30", "5 94"), into(wiring, 3));
    assertEquals(0.1, wiring.into(3).get(1).factor(), 1e-12);
    assertEquals(List.of("5 94"), into(wiring, 5));
  }

  @Test
  void aFaultOfAPathThatIsNotPluggedInIsRefused() {
    FaultFormatException refused =
        assertThrows(FaultFormatException.class, () -> all("wedge:inverted"));
    assertTrue(refused.getMessage().startsWith("'wedge' has no patch"), refused.getMessage());
    assertThrows(FaultFormatException.class, () -> all("ears:swapped=wedge"));
  }

  @Test
  void aCardFailsOnlyTheTakesOfItsPath() {
    Wiring wiring = all("stream:short");
    assertEquals(Optional.of(CardFault.SHORT), wiring.failing(List.of(3, 5)));
    assertEquals(Optional.empty(), wiring.failing(List.of(3, 4)));
  }

  @Test
  void withoutAReferenceInTheFileChannelOneIsTheCable() {
    Chain chain = parsed(CHAIN.replace("reference: { send: 7, return: 8 }\n", ""));
    Wiring wiring = new Wiring(chain, Plugs.of(chain), List.of(), RATE);
    assertEquals(List.of("1 0"), into(wiring, 1));
  }

  private static List<String> into(Wiring wiring, int returned) {
    return wiring.into(returned).stream()
        .map(way -> way.send() + " " + Math.round(way.rig().loop().samples()))
        .toList();
  }

  private static Wiring all(String... faults) {
    Chain chain = chain();
    List<PathFault> parsed =
        Stream.of(faults).map(text -> PathFault.parse(text, chain.paths().keySet())).toList();
    return new Wiring(chain, Plugs.of(chain), parsed, RATE);
  }

  private static Chain chain() {
    return parsed(CHAIN);
  }

  private static Chain parsed(String yaml) {
    try {
      return ChainParser.parse(yaml, "brook.yaml");
    } catch (ChainFormatException e) {
      throw new AssertionError(e.getMessage() + Map.of("hint", e.hint()), e);
    }
  }
}
