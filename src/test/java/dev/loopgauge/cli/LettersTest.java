package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What is typed comes through whole or is refused. */
class LettersTest {
  @Test
  void aLostLetterIsRefusedBeforeAnythingElse() {
    Run run = Run.of("journal", "list", "--show", "B\uFFFD\uFFFDhne");
    run.assertRefused("'B?hne' has letters that this shell's language setting lost");
    assertTrue(run.err().contains("LC_ALL=C.UTF-8"), run.err());
  }
}
