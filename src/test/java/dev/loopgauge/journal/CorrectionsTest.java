package dev.loopgauge.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class CorrectionsTest {
  private static UUID id(long n) {
    return Entries.entry(n).heading().id();
  }

  private static Heading correcting(long n, long corrected) {
    return Entries.correcting(Entries.entry(n), id(corrected)).heading();
  }

  @Test
  void aChainOfCorrectionsLeadsToTheLast() {
    Corrections corrections = Corrections.of(List.of(correcting(2, 1), correcting(3, 2)));
    assertEquals(Optional.of(id(2)), corrections.newer(id(1)));
    assertEquals(id(3), corrections.standing(id(1)));
    assertEquals(
        List.of(false, false, true),
        List.of(1L, 2L, 3L).stream().map(n -> corrections.stands(id(n))).toList());
    assertEquals(List.of(), corrections.contests());
  }

  @Test
  void ofTwoComputersTheLaterCountsAndTheOtherDoesNotStand() {
    Corrections corrections = Corrections.of(List.of(correcting(2, 1), correcting(3, 1)));
    assertEquals(id(3), corrections.standing(id(1)));
    assertEquals(id(3), corrections.standing(id(2)));
    assertFalse(corrections.stands(id(2)));
    assertTrue(corrections.stands(id(3)));
    assertEquals(
        List.of(new Corrections.Contest(id(1), List.of(id(2), id(3)))), corrections.contests());
  }

  /** The first computer's was corrected once more, after both had come together. */
  @Test
  void whatWasKeptLastCountsOnWhicheverBranch() {
    Corrections corrections =
        Corrections.of(List.of(correcting(2, 1), correcting(3, 1), correcting(4, 2)));
    assertEquals(id(4), corrections.standing(id(1)));
    assertEquals(id(4), corrections.standing(id(3)));
    assertEquals(Optional.of(id(2)), corrections.newer(id(1)));
    assertEquals(
        List.of(new Corrections.Contest(id(1), List.of(id(3), id(4)))), corrections.contests());
  }

  /** A correction may come before what it corrects where the clocks of two computers differ. */
  @Test
  void theOrderOfALongChainDoesNotMatter() {
    List<Heading> backwards = new ArrayList<>();
    for (long n = 20_000; n > 1; n--) {
      backwards.add(correcting(n, n - 1));
    }
    assertEquals(id(20_000), Corrections.of(backwards).standing(id(1)));
  }

  @Test
  void whatGoesRoundEnds() {
    Corrections corrections =
        Corrections.of(List.of(correcting(1, 2), correcting(2, 1), correcting(3, 1)));
    assertEquals(id(3), corrections.standing(id(1)));
    assertEquals(id(3), corrections.standing(id(2)));
  }
}
