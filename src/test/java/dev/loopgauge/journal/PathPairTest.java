package dev.loopgauge.journal;

import static dev.loopgauge.journal.Logged.delay;
import static dev.loopgauge.journal.Logged.heading;
import static dev.loopgauge.journal.Logged.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.PathPair.Standing;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PathPairTest {
  private static final long SEED = 20_261_126;

  private static PathPair pair(LoggedDelay before, LoggedDelay after) {
    return PathPair.beforeAndAfter(
            List.of(
                heading(0, "Friday", When.BEFORE, "vocal", before),
                heading(0.2, "Friday", When.AFTER, "vocal", after)))
        .get(0);
  }

  /** JCGM 100:2008, 5.1.2: 0.03 and 0.04 make 0.05. */
  @Test
  void uncertaintiesAddAsSquares() {
    PathPair pair = pair(delay(595, 0.03), delay(659, 0.04));
    assertEquals(0.05, pair.shift().orElseThrow().uncertaintySamples(), 1e-12);
    assertEquals(64, pair.later().orElseThrow().samples(), 1e-9);
    assertEquals(Standing.CHANGED, pair.standing());
  }

  @Test
  void changedMeansMoreThanTheUncertaintyOfBoth() {
    assertEquals(Standing.SAME, pair(delay(595, 0.3), delay(595.49, 0.4)).standing());
    assertEquals(Standing.CHANGED, pair(delay(595, 0.3), delay(595.51, 0.4)).standing());
    assertEquals(Standing.CHANGED, pair(delay(595, 0.3), delay(594.49, 0.4)).standing());
  }

  /** Within twice the standard uncertainty lie 95.4 % of normal readings. */
  @Test
  void unchangedPathsAreCalledSameAsOftenAsTheCoverageSays() {
    SplittableRandom random = new SplittableRandom(SEED);
    int same = 0;
    for (int i = 0; i < 4000; i++) {
      PathPair pair =
          pair(delay(595 + random.nextGaussian(), 2), delay(595 + 0.5 * random.nextGaussian(), 1));
      same += pair.standing() == Standing.SAME ? 1 : 0;
    }
    assertTrue(same > 4000 * 0.94 && same < 4000 * 0.97, same + " of 4000, seed " + SEED);
  }

  @Test
  void differentRatesAreComparedInTime() {
    PathPair pair = pair(delay(480, 0.03), delay(960, 0.06, new SampleRate(96_000)));
    assertEquals(Standing.SAME, pair.standing());
    assertEquals(0, pair.later().orElseThrow().samples(), 1e-9);
    assertEquals(Math.hypot(0.06, 0.06), pair.shift().orElseThrow().uncertaintySamples(), 1e-12);
  }

  @Test
  void whatIsMissingOrNotTrustedIsNeverTheSame() {
    List<PathPair> pairs =
        PathPair.beforeAndAfter(
            List.of(
                heading(0.0, "Friday", When.BEFORE, "a", delay(1, 0.1)),
                heading(0.1, "Friday", When.BEFORE, "b", delay(1, 0.1)),
                heading(0.2, "Friday", When.AFTER, "b", delay(1, 0.1)),
                refused(0.3, "Friday", When.AFTER, "b"),
                heading(0.4, "Friday", When.AFTER, "c", delay(1, 0.1))));
    assertEquals(List.of("a", "b", "c"), pairs.stream().map(p -> p.path().orElse("")).toList());
    pairs.forEach(pair -> assertEquals(Standing.NOT_COMPARED, pair.standing(), pair::toString));
  }

  @Test
  void theLastOfEachCountsAndDuringStandsInForAfter() {
    Heading before = heading(0.1, "Friday", When.BEFORE, "a", delay(2, 0.1));
    Heading during = heading(0.2, "Friday", When.DURING, "a", delay(3, 0.1));
    Heading after = heading(0.3, "Friday", When.AFTER, "a", delay(4, 0.1));
    Heading first = heading(0.0, "Friday", When.BEFORE, "a", delay(1, 0.1));
    assertEquals(
        List.of(new PathPair(Optional.of("a"), Optional.of(before), Optional.of(during))),
        PathPair.beforeAndAfter(List.of(first, before, during)));
    assertEquals(
        Optional.of(after),
        PathPair.beforeAndAfter(List.of(before, during, after)).get(0).second());
  }

  @Test
  void twoShowsAreComparedAtTheSamePartOfTheDay() {
    Heading friday = heading(0, "Friday", When.BEFORE, "a", delay(1, 0.1));
    Heading late = heading(0.2, "Friday", When.AFTER, "a", delay(2, 0.1));
    Heading saturday = heading(1, "Saturday", When.BEFORE, "a", delay(3, 0.1));
    assertEquals(
        List.of(new PathPair(Optional.of("a"), Optional.of(friday), Optional.of(saturday))),
        PathPair.between(List.of(friday, late), List.of(saturday), When.BEFORE));
  }
}
