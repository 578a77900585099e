package dev.loopgauge.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.UnknownPathException;
import dev.loopgauge.signal.SampleRate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlanTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final SampleRate DOUBLE_RATE = new SampleRate(96_000);

  /**
   * By hand at 48 kHz: house is 48 + 2 x block + 96 + 24 samples, 15 ms are 720, so the block may
   * be (720 - 168) / 2 = 276 at most. In-ear is the same by the host, and 5 ms are 240: block 36 at
   * most; before the host it is 48 + 24 = 72 samples, 1.5 ms.
   */
  private static final String THEATRE =
      """
      sample-rate: 48000
      block-size: 64
      stages:
        desk: { ms: 1 }
        host-blocks: { blocks: 2 }
        look-ahead: { samples: 96, reported-by: host }
        box: { samples: 24 }
      paths:
        house: { listener: house, stages: [desk, host-blocks, look-ahead, box] }
        singer: { listener: in-ear, stages: [desk, host-blocks, look-ahead, box] }
      """;

  private static PlanRequest request(Chain chain, PathDelays delays, String... mayLeaveHost) {
    return new PlanRequest(
        chain,
        BlockSizes.USUAL,
        List.of(RATE),
        Set.of(mayLeaveHost),
        PictureRule.EBU_R37,
        delays,
        Map.of());
  }

  private static List<Integer> blocks(Plan plan) {
    return plan.choices().stream().map(choice -> choice.setting().blockSize()).toList();
  }

  @Test
  void singerIsTakenFromBeforeTheHostOnceTheBlockGrows() {
    Plan plan = Plan.of(request(Yaml.chain(THEATRE), PathDelays.predicted(), "singer"));
    assertEquals(List.of(256, 192, 128, 96, 64, 48, 32, 16), blocks(plan));
    for (Choice choice : plan.choices()) {
      List<String> expected = choice.setting().blockSize() > 36 ? List.of("singer") : List.of();
      assertEquals(expected, choice.beforeHost(), choice.toString());
    }
    Feed singer = plan.choices().get(0).feeds().get(1);
    assertEquals(72, singer.delay().delay().samples(), 1e-9);
    assertEquals(3.5, singer.marginMs().orElseThrow(), 1e-9);
  }

  /** At 384 the house is 936 samples, 19.5 ms: 4.5 over its limit. */
  @Test
  void limitIsWhatBreaksOneStepUp() {
    Plan plan = Plan.of(request(Yaml.chain(THEATRE), PathDelays.predicted(), "singer"));
    Breach limit = plan.limit().orElseThrow();
    assertEquals(new Setting(384, RATE), limit.setting());
    assertEquals("house", limit.path());
    assertEquals(4.5, limit.overMs(), 1e-9);
  }

  @Test
  void pathThatMustStayInTheHostLimitsTheBlock() {
    Plan plan = Plan.of(request(Yaml.chain(THEATRE), PathDelays.predicted()));
    assertEquals(List.of(32, 16), blocks(plan));
    assertEquals("singer", plan.limit().orElseThrow().path());
  }

  /**
   * From 192 to 256 samples, two blocks add 2.667 ms to both. The house has 15 - (168 + 384) / 48 =
   * 3.5 ms to spare and the wedge, 3 ms later, 0.5 ms: the wedge breaks first. From 256 to 384 on
   * both would, the house by less.
   */
  @Test
  void ofSeveralLimitsTheOneReachedFirstIsNamed() {
    String chain =
        THEATRE
            .replace("box: { samples: 24 }", "box: { samples: 24 }\n  floor: { ms: 3 }")
            .replace("listener: in-ear, stages: [desk,", "listener: wedge, stages: [floor, desk,");
    Plan plan = Plan.of(request(Yaml.chain(chain), PathDelays.predicted()));
    assertEquals(192, blocks(plan).get(0));
    assertEquals("singer", plan.limit().orElseThrow().path());
  }

  @Test
  void emptyPlanSaysWhichLimitExcludesAllAndByHowMuch() {
    String chain = THEATRE.replace("ms: 1", "ms: 20");
    Plan plan = Plan.of(request(Yaml.chain(chain), PathDelays.predicted(), "singer"));
    assertTrue(plan.choices().isEmpty());
    Breach limit = plan.limit().orElseThrow();
    assertEquals("singer", limit.path());
    assertEquals(20 + 24 / 48.0 - 5, limit.overMs(), 1e-9);
    assertEquals(new Setting(16, RATE), limit.setting());
  }

  @Test
  void soundTooLateForItsPictureIsALimitAndSoundTooEarlyIsNot() {
    String stream =
        """
        sample-rate: 48000
        block-size: 64
        stages:
          host: { blocks: 2 }
        paths:
          stream: { listener: stream, stages: [host], picture: screen }
        pictures:
          screen: { ms: %s }
        """;
    Plan late = Plan.of(request(Yaml.chain(stream.formatted("10")), PathDelays.predicted()));
    assertEquals(1024, blocks(late).get(0));
    assertEquals(Breach.Kind.PICTURE, late.limit().orElseThrow().kind());
    assertEquals(4096 / 48.0 - 10 - 60, late.limit().orElseThrow().overMs(), 1e-9);
    Plan early = Plan.of(request(Yaml.chain(stream.formatted("500")), PathDelays.predicted()));
    assertEquals(BlockSizes.USUAL.size(), early.choices().size());
    assertTrue(early.limit().isEmpty());
  }

  @Test
  void measuredFitReplacesThePrediction() {
    PathDelays fitted = PathDelays.fitted(Map.of("house", new BlockFit(RATE, 3, 300)));
    Plan plan = Plan.of(request(Yaml.chain(THEATRE), fitted, "singer"));
    assertEquals(128, blocks(plan).get(0), "3 x 128 + 300 samples are 14.25 ms");
    assertEquals(DelaySource.MEASURED, plan.choices().get(0).feeds().get(0).delay().source());
    assertEquals(DelaySource.PREDICTED, plan.choices().get(0).feeds().get(1).delay().source());
  }

  @Test
  void settingsAtWhichSoundDroppedOutAreLeftOut() {
    Load clean = new Load(OptionalDouble.of(40), OptionalInt.of(0));
    Load dropping = new Load(OptionalDouble.of(95), OptionalInt.of(3));
    Map<Setting, Load> loads =
        Map.of(new Setting(256, RATE), dropping, new Setting(192, RATE), clean);
    PlanRequest request =
        new PlanRequest(
            Yaml.chain(THEATRE),
            List.of(256, 192, 256),
            List.of(RATE, DOUBLE_RATE),
            Set.of("singer"),
            PictureRule.EBU_R37,
            PathDelays.predicted(),
            loads);
    Plan plan = Plan.of(request);
    assertEquals(List.of(new Setting(256, RATE)), plan.droppedOut());
    assertEquals(new Setting(256, DOUBLE_RATE), plan.choices().get(0).setting());
    assertEquals(List.of(256, 192, 192), blocks(plan));
  }

  @Test
  void twoSightingsOfOneSettingCountAsTheWorse() {
    Load one = new Load(OptionalDouble.of(40), OptionalInt.empty());
    Load other = new Load(OptionalDouble.of(60), OptionalInt.of(2));
    assertEquals(other, one.worse(other));
    assertTrue(other.worse(one).droppedOut());
  }

  @Test
  void unknownPathsAreRefused() {
    assertThrows(
        UnknownPathException.class,
        () -> request(Yaml.chain(THEATRE), PathDelays.predicted(), "singr"));
  }

  /** 13 block sizes x 6 rates x 2 to the 8 routings are 19,968 combinations. */
  @Test
  void twentyThousandCombinationsTakeOneLookAtEachPathOfEachSetting() {
    StringBuilder chain = new StringBuilder(THEATRE);
    IntStream.range(0, 7)
        .forEach(
            i ->
                chain.append(
                    "  s" + i + ": { listener: in-ear, stages: [desk, host-blocks, box] }\n"));
    Chain rig = Yaml.chain(chain.toString());
    Set<String> free = new HashSet<>(rig.paths().keySet());
    free.remove("house");
    AtomicInteger looks = new AtomicInteger();
    PathDelays counted =
        (at, path) -> {
          looks.incrementAndGet();
          return PathDelays.predicted().of(at, path);
        };
    List<SampleRate> rates =
        IntStream.of(44_100, 48_000, 88_200, 96_000, 176_400, 192_000)
            .mapToObj(SampleRate::new)
            .toList();
    Plan.of(
        new PlanRequest(
            rig, BlockSizes.USUAL, rates, free, PictureRule.EBU_R37, counted, Map.of()));
    int settings = BlockSizes.USUAL.size() * rates.size();
    assertTrue(looks.get() <= (settings + 1) * rig.paths().size(), looks + " looks");
  }

  static IntStream seeds() {
    return IntStream.range(0, 300);
  }

  @Tag("campaign")
  @ParameterizedTest
  @MethodSource("seeds")
  void agreesWithTryingEveryCombination(int seed) {
    PlanRequest request = randomRequest(new Random(seed));
    Plan plan = Plan.of(request);
    PlanOracle oracle = new PlanOracle(request);
    List<PlanOracle.Tried> best = oracle.best();
    String message = "seed " + seed;
    assertEquals(
        best.stream().map(PlanOracle.Tried::setting).toList(),
        plan.choices().stream().map(Choice::setting).toList(),
        message);
    for (int i = 0; i < best.size(); i++) {
      assertEquals(best.get(i).before(), Set.copyOf(plan.choices().get(i).beforeHost()), message);
      assertEquals(best.get(i).apartMs(), plan.choices().get(i).pictureApartMs(), 1e-6, message);
    }
    if (best.isEmpty()) {
      assertEquals(oracle.nearestMissMs(), plan.limit().orElseThrow().overMs(), 1e-6, message);
    }
  }

  private static PlanRequest randomRequest(Random random) {
    StringBuilder yaml = new StringBuilder("sample-rate: 48000\nblock-size: 64\nstages:\n");
    yaml.append("  desk: { ms: " + random.nextInt(60) / 10.0 + " }\n");
    yaml.append("  host-blocks: { blocks: " + (1 + random.nextInt(3)) + " }\n");
    yaml.append("  host-fixed: { samples: " + random.nextInt(300) + " }\n");
    yaml.append("  box: { samples: " + random.nextInt(100) + " }\npaths:\n");
    Set<String> free = new HashSet<>();
    for (int i = 0; i < 1 + random.nextInt(5); i++) {
      yaml.append("  p" + i + ": { stages: [desk, ");
      yaml.append(random.nextInt(4) > 0 ? "host-blocks, host-fixed, box], " : "box], ");
      String[] listeners = {"in-ear", "wedge", "house", "stream, picture: screen"};
      yaml.append("listener: " + listeners[random.nextInt(4)] + " }\n");
      if (random.nextBoolean()) {
        free.add("p" + i);
      }
    }
    yaml.append("pictures:\n  screen: { ms: " + random.nextInt(80) + " }\n");
    return new PlanRequest(
        Yaml.chain(yaml.toString()),
        BlockSizes.USUAL.subList(random.nextInt(6), 7 + random.nextInt(6)),
        List.of(RATE, DOUBLE_RATE),
        free,
        PictureRule.EBU_R37,
        PathDelays.predicted(),
        Map.of());
  }
}
