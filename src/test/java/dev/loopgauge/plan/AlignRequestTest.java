package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who is delayed, by how much at most, and from which figures. */
class AlignRequestTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  /**
   * A main loudspeaker, a front fill and a tower that never hear each other but the main. All cost
   * 96 samples of desk; sound travels 343.2 m/s.
   */
  private static final String FIELD =
      """
      sample-rate: 48000
      stages:
        desk: { samples: 96 }
        flute-in: { samples: 12 }
      paths:
        main:  { listener: house, stages: [desk], loudspeaker: main-pa, positions: [row-a, far] }
        fill:  { listener: house, stages: [desk], loudspeaker: front-fill }
        tower: { listener: house, stages: [desk], loudspeaker: tower-pa }
        flute: { listener: house, stages: [flute-in] }
      positions:
        row-a: { throw-metres: { main-pa: 12, front-fill: 2.5 } }
        far:   { throw-metres: { main-pa: 68, tower-pa: 8 } }
      mixes:
        field: [main, fill, tower, flute]
      """;

  private static AlignRequest request(Chain chain) {
    return AlignRequest.of(chain, Map.of(), Optional.empty(), DeskStep.SAMPLE);
  }

  private static AlignedPath path(AlignRequest request, String name) {
    return Alignment.of(request).mixes().get(0).paths().stream()
        .filter(path -> path.path().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static AlignRequest measured(Chain chain, String... loops) {
    Map<String, MeasuredLoop> measured = new HashMap<>();
    for (String loop : loops) {
      String[] words = loop.split(" ", 3);
      measured.put(
          words[0],
          new MeasuredLoop(
              new Latency(Double.parseDouble(words[1]), RATE),
              0.1,
              Optional.of(words[2]),
              Optional.empty()));
    }
    return new AlignRequest(
        chain,
        measured,
        Optional.empty(),
        DeskStep.SAMPLE,
        Set.of(Listener.IN_EAR),
        OptionalDouble.empty());
  }

  @Test
  void performersAreLeftAloneUnlessAskedFor() {
    AlignedPath inEar = path(request(Harbour.chain()), "vocal-in-ear");
    assertEquals(AlignedPath.Part.HELD, inEar.part());
    assertEquals(0, inEar.add().samples());
    assertFalse(inEar.passesLimit());
    AlignRequest asked = request(Harbour.chain()).delaying(Set.of(Listener.IN_EAR));
    assertEquals(488, path(asked, "vocal-in-ear").add().samples());
  }

  @Test
  void nobodyIsDelayedToMeetAPerformer() {
    Chain chain = Harbour.with("[vocal-house, vocal-in-ear]", "[vocal-stream, band-in-ear]");
    assertEquals(0, path(request(chain), "vocal-stream").add().samples());
  }

  /** Each meets the main where both are heard: 9.5 m and 60 m of air. */
  @Test
  void loudspeakersMeetWhereBothAreHeard() {
    AlignRequest request = request(Yaml.chain(FIELD));
    assertEquals(9.5 / 343.2 * 1000, path(request, "fill").add().ms(), 0.011);
    assertEquals(Optional.of("row-a"), path(request, "fill").position());
    assertEquals(60 / 343.2 * 1000, path(request, "tower").add().ms(), 0.011);
    assertEquals(Optional.of("far"), path(request, "tower").position());
    assertEquals(0, path(request, "main").add().samples());
    assertEquals(List.of("main"), Alignment.of(request).mixes().get(0).targets());
  }

  @Test
  void otherInputsAreLeftAlone() {
    assertEquals(AlignedPath.Part.ALONE, path(request(Yaml.chain(FIELD)), "flute").part());
    assertEquals(0, path(request(Yaml.chain(FIELD)), "flute").add().samples());
  }

  @Test
  void deskAddsNoMoreThanItCan() {
    Chain chain = Yaml.chain(FIELD);
    AlignedPath tower = path(request(chain).atMost(100), "tower");
    assertEquals(4800, tower.add().samples());
    assertEquals(4800 - 60 / 343.2 * 48_000, tower.left().samples(), 1e-6);
    assertTrue(tower.exceedsDesk(DeskStep.SAMPLE, chain));
    assertFalse(path(request(chain).atMost(100), "fill").exceedsDesk(DeskStep.SAMPLE, chain));
    assertFalse(path(request(chain), "tower").exceedsDesk(DeskStep.SAMPLE, chain));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN})
  void longestDelayIsAboveNothing(double ms) {
    assertThrows(IllegalArgumentException.class, () -> request(Harbour.chain()).atMost(ms));
  }

  /**
   * The desk makes up for 29 samples of the house's de-esser. Predicted: 444 to add. A reading that
   * is as the budget says must not give 473.
   */
  @Test
  void pathMeasuredAsBudgetedGetsThePredictedAdvice() {
    Chain chain =
        Yaml.chain(
            """
            sample-rate: 48000
            stages:
              in: { samples: 12 }
              host: { samples: 444 }
              de-esser: { samples: 29, compensated: yes }
            paths:
              house:  { listener: house, stages: [in, host, de-esser] }
              in-ear: { listener: in-ear, stages: [in] }
            mixes: { front: [house, in-ear] }
            """);
    AlignRequest predicted = request(chain).delaying(Set.of(Listener.IN_EAR));
    assertEquals(444, path(predicted, "in-ear").add().samples());
    AlignRequest one = measured(chain, "in-ear 12 before");
    assertEquals(444, path(one, "in-ear").add().samples());
    assertEquals(444, path(measured(chain, "house 485 before"), "in-ear").add().samples());
    AlignRequest both = measured(chain, "house 485 before", "in-ear 12 before");
    assertEquals(444, path(both, "in-ear").add().samples());
    AlignRequest withWhatTheDeskAdds = measured(chain, "house 485 before", "in-ear 41 before");
    assertEquals(444, path(withWhatTheDeskAdds, "in-ear").add().samples());
    assertFalse(path(withWhatTheDeskAdds, "in-ear").outsideBudget());
  }

  @Test
  void eachFigureSaysWhereItIsFrom() {
    AlignRequest request = measured(Harbour.chain(), "vocal-house 559 before");
    assertEquals("measured before", path(request, "vocal-house").source());
    assertEquals("predicted", path(request, "vocal-in-ear").source());
    MeasuredLoop dated =
        new MeasuredLoop(
            new Latency(1, RATE), 0, Optional.of("after"), Optional.of("2026-05-01 20:14"));
    assertEquals("measured 2026-05-01 20:14, after", dated.source());
  }

  @Test
  void readingsOfTwoStatesAreRefused() {
    String refused =
        assertThrows(
                IllegalArgumentException.class,
                () -> measured(Harbour.chain(), "vocal-house 559 before", "vocal-in-ear 71 after"))
            .getMessage();
    assertTrue(refused.contains("after and before"), refused);
  }

  /** Budget 559, tolerance 5.4, uncertainty 0.1, and 1 for rounding: 6.5 are allowed. */
  @ParameterizedTest
  @ValueSource(doubles = {-6.6, 6.6})
  void readingOutsideItsBudgetIsMarked(double off) {
    Chain chain = Harbour.chain();
    assertTrue(
        path(measured(chain, "vocal-house " + (559 + off) + " before"), "vocal-house")
            .outsideBudget());
    assertFalse(
        path(measured(chain, "vocal-house " + (559 + off * 0.98) + " before"), "vocal-house")
            .outsideBudget());
  }
}
