package dev.loopgauge.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.junit.jupiter.api.Test;

class ChainTextTest {
  private static String digest(String text) {
    return new ChainText("hall.yaml", text).digest();
  }

  /** The fuzzer found that an export could be changed so, unseen. */
  @Test
  void halvesOfSurrogatePairsAreToldApart() {
    assertNotEquals(digest("half \uD83D a pair"), digest("half \uD82D a pair"));
  }

  /** Entries of every version hold these digests. */
  @Test
  void wholeTextsKeepTheirDigests() {
    String whole = "chain: B\u00FChne \uD83C\uDFB7 \\n\n";
    assertEquals(Sha256.of(whole), digest(whole));
  }
}
