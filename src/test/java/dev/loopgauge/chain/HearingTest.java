package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.chain.Judged.Against;
import dev.loopgauge.chain.file.ChangeFormat;
import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Limits by what is heard. Sound travels 343.2 m a second (ISO 9613-1:1993, reported). In the field
 * rig vocal-house costs 12 + 38.4 + 128 + 11 samples, 3.946 ms, vocal-tower 176.279 ms.
 */
class HearingTest {
  private static final double HOUSE_MS = 189.4 / 48;
  private static final double TOWER_MS = (12 + 38.4 + 11) / 48 + 175;

  private final Chain field = ChainFiles.field();

  private static double airMs(double metres) {
    return metres / 343.2 * 1000;
  }

  private static SeatArrival seat(Chain chain, String path, String position) {
    return ChainFiles.budget(chain, path).seats().stream()
        .filter(arrival -> arrival.position().equals(position))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void pathsDelayIsWithoutAirAndEachPositionAddsItsOwn() {
    assertEquals(HOUSE_MS, ChainFiles.budget(field, "vocal-house").delay().ms(), 1e-9);
    assertEquals(HOUSE_MS + airMs(12), seat(field, "vocal-house", "row-a").delay().ms(), 1e-9);
    assertEquals(HOUSE_MS + airMs(68), seat(field, "vocal-house", "tower").delay().ms(), 1e-9);
  }

  /** Row A hears the source after 2 m, and the main loudspeaker 10 m and 3.9 ms later. */
  @Test
  void frontRowCountsFromTheDirectSound() {
    SeatArrival front = seat(field, "vocal-house", "row-a");
    assertEquals(SeatArrival.DIRECT_SOUND, front.first());
    assertEquals(HOUSE_MS + airMs(10), front.afterFirst().ms(), 1e-9);
    assertEquals(Standing.OVER, front.standing());
  }

  /** The tower sounds at 176.3 ms + 8 m, 199.6 ms, and main-pa 2.5 ms later. */
  @Test
  void seventyMetresOfAirAreNoFault() {
    double main = HOUSE_MS + airMs(68);
    double tower = TOWER_MS + airMs(8);
    SeatArrival late = seat(field, "vocal-house", "tower");
    assertEquals("vocal-tower", late.first());
    assertEquals(main - tower, late.afterFirst().ms(), 1e-9);
    assertEquals(Standing.WITHIN, late.standing());
    assertEquals("vocal-tower", seat(field, "vocal-tower", "tower").first());
    assertEquals(0, seat(field, "vocal-tower", "tower").afterFirst().ms(), 1e-9);
  }

  /** Without its delay the tower is 176 ms early; the main loudspeaker is heard that much later. */
  @Test
  void namesThePairAndWhichOfThemLacksDelay() {
    Chain chain =
        ChainFiles.parsed(
            ChainFiles.FIELD.replace("tower-delay:  { ms: 175 }", "tower-delay:  { ms: 0 }"));
    PathBudget main = ChainFiles.budget(chain, "vocal-house");
    assertEquals(Standing.OVER, main.standing());
    assertEquals(Against.EARLIER_PATH, main.judged().against());
    assertEquals(Optional.of("vocal-tower"), main.judged().earlier());
    assertEquals(Optional.of("tower"), main.judged().position());
    assertEquals(HOUSE_MS + airMs(68) - (TOWER_MS - 175 + airMs(8)), main.judged().ms(), 1e-9);
    assertEquals("vocal-tower at tower", main.judged().counted());
  }

  @Test
  void otherInputsAreNotCompared() {
    Chain chain =
        ChainFiles.parsed(
            ChainFiles.FIELD
                .replace("tower-delay:  { ms: 175 }", "tower-delay:  { ms: 0 }")
                .replace(
                    "input: vocal\n    stages: [in, tower",
                    "input: flute\n    stages: [in, tower"));
    assertEquals("vocal-house", seat(chain, "vocal-house", "tower").first());
  }

  @Test
  void withoutDirectSoundTheFirstPathIsJudgedByItsDelayWithoutAir() {
    Chain chain = ChainFiles.parsed(ChainFiles.FIELD.replaceAll("direct-metres: \\d+, ", ""));
    SeatArrival alone = seat(chain, "vocal-house", "row-a");
    assertEquals("vocal-house", alone.first());
    assertEquals(HOUSE_MS, alone.judged().ms(), 1e-9);
    assertEquals(Against.SOURCE_WITHOUT_AIR, alone.judged().against());
  }

  @Test
  void houseWithoutPositionsCountsWithoutAir() {
    Chain chain = ChainFiles.rig("ms: 4", "metres: 70");
    PathBudget budget = ChainFiles.budget(chain, "all");
    assertEquals(4, budget.judged().ms(), 1e-9);
    assertEquals(4 + airMs(70), budget.delay().ms(), 1e-9);
    assertEquals(Standing.WITHIN, budget.standing());
    assertEquals("source, without air", budget.judged().counted());
  }

  @Test
  void houseWithItsDirectSoundCountsFromThat() {
    Chain chain = ChainFiles.theatre();
    PathBudget budget = ChainFiles.budget(chain, "field-tower");
    assertEquals(Against.DIRECT_SOUND, budget.judged().against());
    assertEquals(Math.max(0, budget.delay().ms() - airMs(33.528)), budget.judged().ms(), 1e-9);
  }

  @Test
  void performersCountFromTheSourceAirIncluded() {
    PathBudget wedge = ChainFiles.budget(ChainFiles.theatre(), "vocal-wedge");
    assertEquals(wedge.delay().ms(), wedge.judged().ms(), 1e-9);
    Chain chain =
        ChainFiles.parsed(ChainFiles.FIELD.replaceFirst("listener: house", "listener: wedge"));
    assertEquals(HOUSE_MS + airMs(68), ChainFiles.budget(chain, "vocal-house").judged().ms(), 1e-9);
  }

  @Test
  void overrideIsOnTheGap() {
    double gap = HOUSE_MS + airMs(10);
    Chain wide =
        ChainFiles.parsed(
            ChainFiles.FIELD + "listeners: { house: { limit-ms: " + (gap + 0.01) + " } }\n");
    assertEquals(Standing.WITHIN, seat(wide, "vocal-house", "row-a").standing());
    Chain narrow =
        ChainFiles.parsed(
            ChainFiles.FIELD + "listeners: { house: { limit-ms: " + (gap - 0.01) + " } }\n");
    assertEquals(Standing.OVER, seat(narrow, "vocal-house", "row-a").standing());
  }

  /** From 70 to 60 m: main-pa 58 m, and the tower, 8 m away before, is now 2 m ahead. */
  @Test
  void movingAListenerMovesDirectSoundAndLoudspeakersAlike() {
    Chain moved = ChangeFormat.parse("position.tower.direct-metres=60").on(field);
    assertEquals(
        Map.of("main-pa", 58.0, "tower-pa", 2.0), moved.positions().get("tower").throwMetres());
    assertEquals(HOUSE_MS + airMs(58), seat(moved, "vocal-house", "tower").delay().ms(), 1e-9);
    assertEquals(TOWER_MS + airMs(2), seat(moved, "vocal-tower", "tower").delay().ms(), 1e-9);
    Chain turned = ChangeFormat.parse("position.tower.throw-metres.main-pa=60").on(field);
    assertEquals(HOUSE_MS + airMs(60), seat(turned, "vocal-house", "tower").delay().ms(), 1e-9);
    assertEquals(TOWER_MS + airMs(8), seat(turned, "vocal-tower", "tower").delay().ms(), 1e-9);
  }

  @Test
  void positionWithoutDirectSoundCannotBeMoved() {
    Chain chain = ChainFiles.parsed(ChainFiles.FIELD.replace("direct-metres: 70, ", ""));
    Change change = ChangeFormat.parse("position.tower.direct-metres=60");
    String hint = assertThrows(ChangeFormatException.class, () -> change.on(chain)).hint();
    assertEquals("state them, or change position.tower.throw-metres.main-pa", hint);
  }

  /** 343.2 sqrt(277.15/293.15) = 333.70 m/s at 4 degrees C. */
  @Test
  void coldAirIsSlower() {
    Chain cold = ChangeFormat.parse("air-temperature=4").on(field);
    double metresPerSecond = 343.2 * Math.sqrt(277.15 / 293.15);
    assertEquals(
        HOUSE_MS + 68_000 / metresPerSecond, seat(cold, "vocal-house", "tower").delay().ms(), 1e-9);
  }

  @Test
  void allBudgetsAtOnceAreThoseOfEachPath() {
    List<PathBudget> all = ChainBudget.all(field);
    assertEquals(3, all.size());
    for (PathBudget budget : all) {
      assertEquals(ChainFiles.budget(field, budget.name()), budget);
    }
  }

  @Test
  void measuredDelaysMoveWhatIsHeardFirst() {
    Map<String, Latency> delays =
        Map.of(
            "vocal-house", Latency.ofMs(HOUSE_MS, field.rate()),
            "vocal-tower", Latency.ofMs(TOWER_MS - 100, field.rate()));
    Judged judged = Hearing.of(field, delays).judged(field.path("vocal-house"));
    assertEquals(Optional.of("vocal-tower"), judged.earlier());
    assertEquals(HOUSE_MS + airMs(68) - (TOWER_MS - 100 + airMs(8)), judged.ms(), 1e-9);
  }
}
