package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainFiles;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("campaign")
class ChainMutationTest {
  private static final int MUTANTS = 4_000;
  private static final String[] SCRAPS = {
    ":",
    ": ",
    "-",
    "- ",
    "[",
    "]",
    "{",
    "}",
    ",",
    "&a ",
    "*a",
    "!x ",
    "|\n",
    ">-\n",
    "\"",
    "'",
    "\\",
    "#",
    "? ",
    "\t",
    "\n",
    "\r",
    "\0",
    "\uFEFF",
    "\u2028",
    "\uD83D",
    "\uDE00",
    "%YAML 9.9\n",
    "---\n",
    "...\n",
    "<<: ",
    "~",
    "null",
    "-1",
    "1e999",
    ".nan",
    "99999999999999999999",
    "0/0",
    "\"\\ud800\"",
    "frames: 2",
    "blocks: 0.5"
  };

  @Test
  void mutatedChainFilesAreReadOrRefusedAndNothingElse() {
    int read = 0;
    for (int seed = 0; seed < MUTANTS; seed++) {
      read += survives(seed) ? 1 : 0;
    }
    assertTrue(read > MUTANTS / 100, "mutations too coarse to test reading: " + read);
    assertTrue(read < MUTANTS * 9 / 10, "mutations too mild to test refusing: " + read);
  }

  private static boolean survives(long seed) {
    String mutant = mutant(new SplittableRandom(seed));
    try {
      Chain chain = ChainParser.parse(mutant, "rig.yaml");
      chain.paths().values().forEach(path -> ChainBudget.of(chain, path).delay());
      chain.pictures().values().forEach(chain::delay);
      return true;
    } catch (ChainFormatException e) {
      assertTrue(
          e.getMessage().matches("rig\\.yaml:[1-9]\\d*:[1-9]\\d*: expected .+, found .+")
              && !e.hint().isBlank(),
          () -> "seed " + seed + ": " + e.getMessage() + " / " + e.hint());
      return false;
    } catch (RuntimeException | StackOverflowError e) {
      return fail("seed " + seed + " gave " + e + " for\n" + mutant, e);
    }
  }

  private static String mutant(SplittableRandom random) {
    StringBuilder text = new StringBuilder(ChainFiles.THEATRE);
    for (int edits = 1 + random.nextInt(3); edits > 0; edits--) {
      int at = random.nextInt(text.length());
      int end = Math.min(text.length(), at + 1 + random.nextInt(random.nextInt(20) == 0 ? 400 : 6));
      switch (random.nextInt(5)) {
        case 0 -> text.delete(at, end);
        case 1 -> text.insert(at, SCRAPS[random.nextInt(SCRAPS.length)]);
        case 2 -> text.insert(random.nextInt(text.length()), text.substring(at, end));
        case 3 -> text.setCharAt(at, (char) random.nextInt(0x180));
        default -> text.replace(at, end, SCRAPS[random.nextInt(SCRAPS.length)]);
      }
      if (text.isEmpty()) {
        return "";
      }
    }
    return text.toString();
  }
}
