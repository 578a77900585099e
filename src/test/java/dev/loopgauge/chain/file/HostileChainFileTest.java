package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that could hang or exhaust a careless reader; the time limit only ends a hang. */
class HostileChainFileTest {
  private static final Duration HANG = Duration.ofSeconds(30);

  @ParameterizedTest
  @ValueSource(ints = {1_001, 10_000, 1_000_000})
  void tooManyStagesAreRefused(int count) {
    StringBuilder yaml = new StringBuilder("sample-rate: 48000\nstages:\n");
    for (int i = 0; i < count; i++) {
      yaml.append("  s").append(i).append(": { ms: 1 }\n");
    }
    String expected =
        count == 1_000_000 ? "a chain file of at most 250000 characters" : "2:1: expected at most";
    assertRefused(yaml.toString(), expected);
  }

  @Test
  void tooManyStagesInOnePathAreRefused() {
    assertRefused(
        "sample-rate: 48000\nstages: { a: { ms: 1 } }\npaths: { p: { listener: house, stages: ["
            + "a,".repeat(1_001)
            + "] } }",
        "at most 1000 entries here, found 1001");
  }

  @Test
  void aliasThatContainsItselfIsRefused() {
    assertRefused("stages: &a\n  b: *a\n", "rig.yaml:2:6: expected a value written out");
    assertRefused("&a [*a]", "rig.yaml:1:5: expected a value written out");
    assertRefused("? &a [*a]\n: 1", "rig.yaml:1:7: expected a value written out");
  }

  @Test
  void aliasBombIsRefusedAtItsFirstAlias() {
    StringBuilder yaml = new StringBuilder("a0: &a0 [x,x,x,x,x,x,x,x,x,x]\n");
    for (int i = 1; i < 30; i++) {
      yaml.append("a" + i + ": &a" + i + " [" + ("*a" + (i - 1) + ",").repeat(10) + "]\n");
    }
    assertRefused(yaml.toString(), "rig.yaml:2:10: expected a value written out, found the alias");
  }

  @ParameterizedTest
  @ValueSource(strings = {"[", "{a: ", "- ", "? ", "!!a [", "&a {? "})
  void bottomlessNestingIsRefused(String opening) {
    assertRefused(opening.repeat(30_000), "expected");
  }

  @Test
  void hugeTextsAreRefused() {
    assertRefused("x".repeat(50_000_000), "at most 250000 characters, found 50000000");
    assertRefused(
        "chain: "
            + "x".repeat(200_000)
            + "\nsample-rate: 48000\nstages: { a: { ms: 1 } }\n"
            + "paths: { p: { listener: house, stages: [a] } }",
        "printable characters");
    assertRefused("a: " + "\"\\u0041".repeat(30_000), "expected");
    assertRefused("k: " + "9".repeat(200_000), "a key of a chain file");
    assertRefused("sample-rate: " + "9".repeat(200_000), "a whole number");
    assertRefused("x".repeat(200) + ": 1\n" + "y: 1\n".repeat(45_000), "expected");
  }

  private static void assertRefused(String yaml, String text) {
    ChainFormatException e =
        assertTimeoutPreemptively(
            HANG,
            () ->
                assertThrows(
                    ChainFormatException.class, () -> ChainParser.parse(yaml, "rig.yaml")));
    assertTrue(e.getMessage().contains(text), e.getMessage());
    assertTrue(e.getMessage().length() < 250, e.getMessage());
  }
}
