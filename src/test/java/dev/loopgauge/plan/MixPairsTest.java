package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MixPairsTest {
  private static final String FIELD =
      """
      sample-rate: 48000
      stages:
        desk: { samples: 96, tolerance-samples: 2 }
        tower-delay: { samples: 4800 }
      paths:
        main:  { listener: house, stages: [desk], loudspeaker: main-pa, positions: [row-a, far] }
        fill:  { listener: house, stages: [desk], loudspeaker: front-fill }
        tower: { listener: house, stages: [desk, tower-delay], loudspeaker: tower-pa }
        stream: { listener: stream, stages: [desk] }
        other: { listener: house, input: flute, stages: [desk], loudspeaker: main-pa }
      positions:
        row-a: { throw-metres: { main-pa: 12, front-fill: 2.5 } }
        far:   { throw-metres: { main-pa: 68, tower-pa: 8 } }
      mixes:
        field: [main, fill, tower, stream, other]
      """;

  /** A mix of this many paths of one input, each of its own delay or all of two kinds. */
  private static Chain many(int count, boolean alike) {
    StringBuilder yaml = new StringBuilder("sample-rate: 48000\nstages:\n");
    int kinds = alike ? 2 : Math.min(count, 999);
    for (int i = 0; i < kinds; i++) {
      yaml.append("  s" + i + ": { samples: " + (100 + i) + " }\n");
    }
    yaml.append("paths:\n");
    for (int i = 0; i < count; i++) {
      yaml.append("  p" + i + ": { listener: house, input: x, stages: [s" + i % kinds + "] }\n");
    }
    yaml.append("mixes:\n  all: [p0");
    for (int i = 1; i < count; i++) {
      yaml.append(", p" + i);
    }
    return Yaml.chain(yaml + "]\n");
  }

  @Test
  void loudspeakersPairWhereBothAreHeardAndInputsDoNot() {
    List<MixPair> pairs = Harbour.mix(Yaml.chain(FIELD)).pairs();
    assertEquals(
        List.of("fill main", "tower main"),
        pairs.stream().map(pair -> pair.first().path() + " " + pair.second().path()).toList());
    assertEquals(Optional.of("row-a"), pairs.get(0).position());
    assertEquals(Optional.of("far"), pairs.get(1).position());
  }

  /** 9.5 m of air apart; at the tower 60 m less its 4,800 samples. What both pass cancels. */
  @Test
  void airOfAPositionCountsInAPair() {
    List<MixPair> pairs = Harbour.mix(Yaml.chain(FIELD)).pairs();
    assertEquals(9.5 / 343.2 * 1000, pairs.get(0).outcomes().get(0).secondLater().ms(), 1e-9);
    assertEquals(60 / 343.2 * 1000 - 100, pairs.get(1).outcomes().get(0).secondLater().ms(), 1e-9);
    assertEquals(0, pairs.get(0).toleranceSamples());
  }

  @Test
  void upToThirtyPathsEachIsPairedWithEach() {
    MixBudget mix = Harbour.mix(many(30, false));
    assertEquals(30 * 29 / 2, mix.pairs().size());
    assertEquals(0, mix.leftOut());
  }

  @Test
  void ofMorePathsEachKindIsPairedWithTheFirstHeard() {
    MixBudget mix = Harbour.mix(many(31, false));
    assertEquals(30, mix.pairs().size());
    assertEquals(31 * 30 / 2 - 30, mix.leftOut());
    assertTrue(mix.pairs().stream().allMatch(pair -> pair.first().path().equals("p0")));
    MixBudget alike = Harbour.mix(many(400, true));
    assertEquals(1, alike.pairs().size());
    assertEquals(400, alike.arrivals().size());
    assertEquals(400 * 399 / 2 - 1, alike.leftOut());
  }

  /** Each with each would be 499,500 pairs. */
  @Test
  void thousandPathsMakeNoMorePairsThanPaths() {
    Chain chain = many(1000, false);
    MixBudget mix = Harbour.mix(chain);
    assertEquals(1000, mix.arrivals().size());
    assertEquals(998, mix.pairs().size());
  }
}
