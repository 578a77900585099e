package dev.loopgauge.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dev.loopgauge.journal.MeasuredSummary.Copy;
import dev.loopgauge.journal.MeasuredSummary.Octave;
import dev.loopgauge.journal.MeasuredSummary.Told;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What counts as changed between two measurements, on either side of each limit. */
class AspectChangesTest {
  private static final Told TOLD = new Told("so it is", "look");

  private static MeasuredSummary heard(double levelDb, double uncertaintyDb, double noiseDb) {
    return new MeasuredSummary(
        Optional.of(false),
        Optional.of(levelDb),
        uncertaintyDb,
        Optional.of(noiseDb),
        List.of(),
        List.of(),
        Map.of());
  }

  private static MeasuredSummary found(String... codes) {
    Map<String, Told> findings = new HashMap<>();
    Arrays.stream(codes).forEach(code -> findings.put(code, TOLD));
    return with(List.of(), List.of(), findings);
  }

  private static MeasuredSummary with(
      List<Copy> copies, List<Octave> octaves, Map<String, Told> findings) {
    return new MeasuredSummary(
        Optional.of(false), Optional.of(-6.0), 0, Optional.of(60.0), copies, octaves, findings);
  }

  private static MeasuredSummary copies(Copy... copies) {
    return with(List.of(copies), List.of(), Map.of());
  }

  /** Octaves from 125 Hz on. */
  private static MeasuredSummary octaves(double uncertaintyDb, double... levelsDb) {
    List<Octave> octaves = new ArrayList<>();
    for (double level : levelsDb) {
      octaves.add(new Octave(125 << octaves.size(), level, uncertaintyDb));
    }
    return with(List.of(), octaves, Map.of());
  }

  private static List<ComparedAspect> aspects(MeasuredSummary before, MeasuredSummary after) {
    return AspectChanges.beside(before, after).stream().map(AspectChange::aspect).toList();
  }

  private static List<ComparedAspect> only(boolean changed, ComparedAspect aspect) {
    return changed ? List.of(aspect) : List.of();
  }

  @Test
  void theSameTwiceHasNotChanged() {
    MeasuredSummary full =
        with(
            List.of(new Copy(2.5, -0.5)),
            octaves(0.1, -6, -7, -12).octaves(),
            Map.of("dropout", TOLD, "inverted", TOLD));
    assertEquals(List.of(), aspects(full, full));
  }

  @ParameterizedTest
  @CsvSource({
    "-6, -6.99, 0, false",
    "-6, -7.01, 0, true",
    "-6, -4.99, 0, true",
    "-6, -8.7, 2, false",
    "-6, -8.9, 2, true"
  })
  void aLevelCountsBeyondOneDecibelAndItsUncertainty(
      double before, double after, double uncertaintyDb, boolean changed) {
    List<AspectChange> changes =
        AspectChanges.beside(heard(before, uncertaintyDb, 60), heard(after, uncertaintyDb, 60));
    assertEquals(
        only(changed, ComparedAspect.LEVEL), changes.stream().map(AspectChange::aspect).toList());
    changes.forEach(
        change ->
            assertEquals(
                after - before, assertInstanceOf(AspectChange.Level.class, change).byDb(), 1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "60, 50.1, false",
    "60, 50, true",
    "20, 60, false",
    "300, 110.1, false",
    "300, 110, true"
  })
  void noiseCountsFromTenDecibelsOn(double before, double after, boolean changed) {
    assertEquals(
        only(changed, ComparedAspect.NOISE), aspects(heard(-6, 0, before), heard(-6, 0, after)));
  }

  @Test
  void aQuieterSoundInTheSameNoiseIsNoNoise() {
    assertEquals(List.of(ComparedAspect.LEVEL), aspects(heard(0, 0, 60), heard(-12, 0, 48)));
    assertEquals(
        List.of(ComparedAspect.LEVEL, ComparedAspect.NOISE),
        aspects(heard(0, 0, 60), heard(-12, 0, 37.9)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"dropout", "clipped", "level-moves", "clocks-not-locked"})
  void whatTearsTheSoundIsNotNoiseToo(String code) {
    MeasuredSummary clean = found();
    MeasuredSummary spliced =
        new MeasuredSummary(
            clean.inverted(),
            clean.levelDb(),
            0,
            Optional.of(20.0),
            List.of(),
            List.of(),
            found(code).findings());
    assertEquals(1, AspectChanges.beside(clean, spliced).size());
    assertInstanceOf(AspectChange.Found.class, AspectChanges.beside(clean, spliced).get(0));
  }

  @ParameterizedTest
  @CsvSource({
    "two-arrivals, ARRIVALS",
    "dropout, LOST_SOUND",
    "clocks-not-locked, CLOCKS",
    "level-moves, LEVEL",
    "clipped, CLIPPING"
  })
  void aFindingOnOneSideIsAChangeOfItsAspect(String code, ComparedAspect aspect) {
    assertEquals(
        List.of(new AspectChange.Found(aspect, TOLD, false)),
        AspectChanges.beside(found(), found(code)));
    assertEquals(
        List.of(new AspectChange.Found(aspect, TOLD, true)),
        AspectChanges.beside(found(code), found()));
    assertEquals(List.of(), AspectChanges.beside(found(code), found(code)));
  }

  /** The finding says that the copy may be the path; the change, that it is gone. */
  @Test
  void copyThatMayBeThePathIsToldOnce() {
    MeasuredSummary clean = found();
    MeasuredSummary open =
        with(List.of(new Copy(2.5, 0.8)), List.of(), Map.of("two-arrivals", TOLD));
    assertEquals(
        List.of(new AspectChange.Found(ComparedAspect.ARRIVALS, TOLD, false)),
        AspectChanges.beside(clean, open));
    assertEquals(List.of(new AspectChange.Arrival(2.5, 0.8, 0)), AspectChanges.beside(open, clean));
  }

  @Test
  void anotherCopyThanTheOneThatMayBeThePathIsToldToo() {
    Copy other = new Copy(9, 0.9);
    MeasuredSummary before = copies(other, new Copy(2.5, 0.7));
    MeasuredSummary after =
        with(List.of(new Copy(2.5, 0.8)), List.of(), Map.of("two-arrivals", TOLD));
    assertEquals(List.of(ComparedAspect.ARRIVALS, ComparedAspect.ARRIVALS), aspects(before, after));
  }

  @Test
  void polarityCountsWhereBothSidesCouldTellIt() {
    MeasuredSummary normal = found();
    MeasuredSummary inverted = inverted(Optional.of(true));
    assertEquals(List.of(new AspectChange.Polarity(true)), AspectChanges.beside(normal, inverted));
    assertEquals(List.of(new AspectChange.Polarity(false)), AspectChanges.beside(inverted, normal));
    assertEquals(List.of(), AspectChanges.beside(normal, inverted(Optional.empty())));
  }

  private static MeasuredSummary inverted(Optional<Boolean> inverted) {
    return new MeasuredSummary(
        inverted, Optional.of(-6.0), 0, Optional.of(60.0), List.of(), List.of(), Map.of());
  }

  /** 0.122 of the sound, in phase, makes it 1 dB louder. */
  @Test
  void theLeastCopyMovesTheLevelByOneDecibel() {
    assertEquals(1, 20 * Math.log10(1 + CopyChanges.LEAST_GAIN), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "0.12, 0, false",
    "0.123, 0, true",
    "0.5, 0.39, false",
    "0.5, 0.37, true",
    "0.1, -0.1, true"
  })
  void aCopyCountsByHowMuchItChanged(double before, double after, boolean changed) {
    MeasuredSummary was = copies(new Copy(2.5, before));
    MeasuredSummary is = after == 0 ? copies() : copies(new Copy(2.5, after));
    assertEquals(only(changed, ComparedAspect.ARRIVALS), aspects(was, is));
    assertEquals(only(changed, ComparedAspect.ARRIVALS), aspects(is, was));
  }

  @ParameterizedTest
  @CsvSource({"2.5, 2.74, false", "2.5, 2.76, true", "100, 101.9, false", "100, 102.1, true"})
  void aCopyElsewhereIsAnotherOne(double before, double after, boolean changed) {
    assertEquals(
        only(changed, ComparedAspect.ARRIVALS),
        aspects(copies(new Copy(before, 0.5)), copies(new Copy(after, 0.5))));
  }

  @ParameterizedTest
  @CsvSource({"-2.9, 0, false", "-3.1, 0, true", "3.1, 0, true", "-3.1, 3, false"})
  void anOctaveCountsBeyondThreeDecibelsAndItsUncertainty(
      double byDb, double uncertaintyDb, boolean changed) {
    MeasuredSummary before = octaves(uncertaintyDb, 0, 0, 0, 0);
    assertEquals(
        only(changed, ComparedAspect.RESPONSE),
        aspects(before, octaves(uncertaintyDb, 0, 0, 0, byDb)));
  }

  @Test
  void aMereChangeOfLevelIsNoChangeOfResponse() {
    assertEquals(List.of(), aspects(octaves(0, 0, -3, -9, 1), octaves(0, -12, -15, -21, -11)));
  }

  @Test
  void theResponseIsToldByTheOctaveThatChangedMost() {
    List<AspectChange> changes =
        AspectChanges.beside(octaves(0, 0, 0, 0, 0, 0), octaves(0, -30, -12, -6, -6, -6.5));
    assertEquals(List.of(new AspectChange.Response(125, -24, 2)), changes);
  }

  @Test
  void anOctaveThatOneSideDidNotTrustIsNotCompared() {
    assertEquals(List.of(), aspects(octaves(0, 0, 0, 0, 20), octaves(0, 0, 0, 0)));
  }

  private static PathPair pair(Optional<Heading> after) {
    return new PathPair(
        Optional.of("vocal"),
        Optional.of(Entries.heading(1, "Night", When.BEFORE, "vocal", 595)),
        after);
  }

  private static Heading silent() {
    Heading plain = Entries.heading(2, "Night", When.AFTER, "vocal", 595);
    return new Heading(
        plain.id(),
        plain.at(),
        plain.show(),
        plain.when(),
        plain.path(),
        "not-trustworthy",
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  @ParameterizedTest
  @CsvSource({"595.09, false", "595.11, true"})
  void theDelayCountsBeyondItsUncertainty(double after, boolean changed) {
    PathPair pair = pair(Optional.of(Entries.heading(2, "Night", When.AFTER, "vocal", after)));
    List<AspectChange> changes = AspectChanges.between(pair, found(), found());
    assertEquals(changed ? 1 : 0, changes.size(), changes::toString);
  }

  @Test
  void aReadingThatIsRefusedAfterwardsIsAChange() {
    assertEquals(
        List.of(new AspectChange.Refused(true, Optional.of(TOLD.text()))),
        AspectChanges.between(
            pair(Optional.of(silent())),
            found(),
            MeasuredSummary.refused(Map.of("no-return", TOLD))));
    assertEquals(
        List.of(
            new AspectChange.Refused(false, Optional.empty()),
            new AspectChange.Found(ComparedAspect.CLIPPING, TOLD, false)),
        AspectChanges.between(
            pair(Optional.of(silent())),
            found(),
            MeasuredSummary.refused(Map.of("clipped", TOLD))));
  }

  @Test
  void whatWasNotMeasuredIsNotCompared() {
    assertEquals(List.of(), AspectChanges.between(pair(Optional.empty()), found(), found()));
    PathPair back =
        new PathPair(Optional.of("vocal"), Optional.of(silent()), pair(Optional.empty()).first());
    assertEquals(List.of(), AspectChanges.between(back, found("no-return"), found()));
  }
}
