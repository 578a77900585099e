package dev.loopgauge.campaign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CampaignTest {
  private static final Revision ONE = new Revision("0123456789abcdef".repeat(3), false);
  private static final Revision OTHER = new Revision("fedcba9876543210".repeat(3), false);

  @TempDir private Path folder;

  private Campaign at(Revision revision) {
    return Campaign.inFull("tried", revision, folder);
  }

  private static List<String> slice(Campaign campaign, String name, Supplier<List<String>> run) {
    return campaign.slice(name, run).orElseThrow();
  }

  private static List<String> mustNotRun() {
    throw new AssertionError("this slice was run before");
  }

  @Test
  void goesOnWhereItWasStopped() {
    slice(at(ONE), "first", () -> List.of("3", "of 5"));
    Campaign again = at(ONE);
    assertEquals(List.of("3", "of 5"), slice(again, "first", CampaignTest::mustNotRun));
    assertEquals(List.of("4"), slice(again, "second", () -> List.of("4")));
  }

  @Test
  void runsAgainWhatWasCutShort() throws IOException {
    slice(at(ONE), "first", () -> List.of("3"));
    Path log = folder.resolve("tried-0123456.tsv");
    Files.writeString(log, "second\t4", StandardOpenOption.APPEND);
    assertEquals(List.of("5"), slice(at(ONE), "second", () -> List.of("5")));
    assertEquals(List.of("3"), slice(at(ONE), "first", CampaignTest::mustNotRun));
    assertEquals(List.of("5"), slice(at(ONE), "second", CampaignTest::mustNotRun));
  }

  @Test
  void drawsOtherSeedsAtAnotherCommit() {
    slice(at(ONE), "first", () -> List.of("3"));
    assertEquals(List.of("7"), slice(at(OTHER), "first", () -> List.of("7")));
    assertNotEquals(at(ONE).seed(1), at(OTHER).seed(1));
  }

  @Test
  void beginsAnewWithChangesThatNoCommitHas() {
    Revision changed = new Revision(ONE.commit(), true);
    slice(at(changed), "first", () -> List.of("3"));
    assertEquals(List.of("4"), slice(at(changed), "first", () -> List.of("4")));
  }

  @Test
  void refusesFiguresThatWouldBreakTheLog() {
    assertThrows(
        IllegalArgumentException.class, () -> slice(at(ONE), "first", () -> List.of("a\tb")));
    assertThrows(
        IllegalArgumentException.class, () -> slice(at(ONE), "first", () -> List.of("a\nb")));
  }

  @Test
  void knowsTheCommitOfThisCheckout() {
    assumeTrue(Files.exists(Path.of(".git")), "this is no checkout");
    assertNotEquals(Revision.UNKNOWN, Revision.of(Path.of("")).label());
  }

  @Test
  void saysSoWhereThereIsNoGit() {
    Revision none = Revision.of(folder.toAbsolutePath().getRoot());
    assertEquals(Revision.UNKNOWN, none.label());
    assertFalse(none.isCertain());
  }
}
