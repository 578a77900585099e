package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What a plan advises where a limit is broken, and what it never does. */
class RemedyTest {
  private static PlanRequest request(Chain chain, List<Integer> sizes, Set<String> mayLeave) {
    return new PlanRequest(
        chain, sizes, List.of(), mayLeave, PictureRule.EBU_R37, PathDelays.predicted(), Map.of());
  }

  private static Breach limit(PlanRequest request) {
    return Plan.of(request).limit().orElseThrow();
  }

  @Test
  void planKeepsTheRateOfTheFileUnlessOthersAreNamed() {
    PlanRequest request = request(Harbour.chain(), List.of(64), Set.of());
    assertEquals(List.of(Harbour.chain().rate()), request.rates());
  }

  /** 6 m of air are 17.5 ms, over a wedge's 15 ms whatever the host does. */
  @Test
  void airIsNeverTakenOut() {
    Chain chain =
        Yaml.chain(
            """
            sample-rate: 48000
            block-size: 64
            stages: { host-blocks: { blocks: 2 }, throw: { metres: 6 } }
            paths: { wedge: { listener: wedge, stages: [host-blocks, throw] } }
            """);
    PlanRequest request = request(chain, List.of(64, 128), Set.of());
    assertEquals(List.of(Remedy.MOVE_NEARER), Remedy.of(request, limit(request)));
  }

  @Test
  void stagesThatAreTooLongCanGoOrBeBypassed() {
    Chain chain = Harbour.with("120, tolerance-samples: 2", "960, tolerance-samples: 2");
    PlanRequest request = request(chain, List.of(64), Set.of("band-in-ear"));
    Breach house = limit(request);
    assertEquals("vocal-house", house.path());
    assertEquals(List.of(Remedy.REMOVE_STAGES, Remedy.BYPASS_HOST), Remedy.of(request, house));
  }

  /** At the tower main-pa comes 176 ms after a feed that isn't delayed. */
  @Test
  void pathThatIsHeardFirstLacksDelay() {
    Chain chain =
        Yaml.chain(
            """
            sample-rate: 48000
            stages: { desk: { ms: 1 } }
            paths:
              main:  { listener: house, stages: [desk], loudspeaker: main-pa }
              tower: { listener: house, stages: [desk], loudspeaker: tower-pa }
            positions:
              far: { throw-metres: { main-pa: 68, tower-pa: 8 } }
            """);
    PlanRequest request = request(chain, List.of(64), Set.of());
    Breach breach = limit(request);
    assertEquals("main", breach.path());
    assertEquals(Optional.of("tower"), breach.earlier());
    assertEquals(60 / 343.2 * 1000, breach.reachedMs(), 1e-9);
    assertEquals(List.of(Remedy.DELAY_EARLIER_PATH), Remedy.of(request, breach));
  }

  @Test
  void secondPatchesAreListedByInputWithThoseWhoGetThem() {
    Chain chain =
        Harbour.with(
            "band-in-ear:  { listener: in-ear,", "band-in-ear:  { listener: in-ear, input: band,");
    Plan plan = Plan.of(request(chain, List.of(64), Set.of("band-in-ear", "vocal-in-ear")));
    assertEquals(
        List.of(new DoublePatch("band", List.of("band-in-ear"))),
        plan.choices().get(0).doublePatches(chain));
  }

  /** Two frames at 25 are 80 ms: only 1,024 would come near, but it is too late for the in-ear. */
  @Test
  void blockSizeForAPictureBreaksNoOtherLimit() {
    Chain chain =
        Yaml.chain(
            """
            sample-rate: 48000
            block-size: 64
            stages: { host-blocks: { blocks: 2 }, cam: { frames: 2 } }
            paths:
              mix: { listener: stream, stages: [host-blocks], picture: cam }
              ear: { listener: in-ear, stages: [host-blocks] }
            pictures: { cam: { frame-rate: 25, stages: [cam] } }
            """);
    assertEquals(
        Optional.of(96),
        closest(chain, 32, 64, 96, 128, 1024).map(PictureBlock::blockSize),
        "96 is 4 ms in the ear, 128 is 5.3");
    assertTrue(closest(chain, 64, 1024).isEmpty());
  }

  private static Optional<PictureBlock> closest(Chain chain, Integer... sizes) {
    return PictureBlocks.of(chain, PathDelays.predicted(), PictureRule.EBU_R37, List.of(sizes))
        .closest("mix");
  }
}
