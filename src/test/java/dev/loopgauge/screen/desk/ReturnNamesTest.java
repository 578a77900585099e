package dev.loopgauge.screen.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainParser;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ReturnNamesTest {
  private static final Optional<Integer> REFERENCE = Optional.of(1);

  private static Chain chain() throws Exception {
    return ChainParser.parse(
        """
        chain: Rehearsal room
        sample-rate: 48000
        reference: { send: 1, return: 1 }
        stages:
          desk: { samples: 40 }
        paths:
          lead: { listener: house, stages: [desk], patch: { send: 2, return: 2 } }
          both: { listener: stream, stages: [desk], patch: { send: 3, return: 2 } }
          ears: { listener: in-ear, stages: [desk], patch: { send: 4, return: 4, against: 5 } }
        """,
        "rig.yaml");
  }

  @Test
  void aPathIsWhateverIsNoReference() throws Exception {
    ReturnNames names = ReturnNames.ofPath(chain().path("lead"), REFERENCE);
    assertEquals("reference, return 1", names.of(1));
    assertEquals("lead, return 7", names.of(7));
    assertEquals("reference, return 5", ReturnNames.ofPath(chain().path("ears"), REFERENCE).of(5));
  }

  @Test
  void ofAllPathsThePatchSaysWhichIsWhich() throws Exception {
    ReturnNames names = ReturnNames.ofAll(chain(), REFERENCE);
    assertEquals("reference, return 1", names.of(1));
    assertEquals("lead, both, return 2", names.of(2));
    assertEquals("reference, return 5", names.of(5));
    assertEquals("return 9", names.of(9));
    assertTrue(names.isFed(4, Set.of(2)));
  }

  @Test
  void inARoundOnlyThoseReturnsHearSomethingWhoseSendsPlay() throws Exception {
    ReturnNames names = ReturnNames.ofRound(chain(), REFERENCE);
    assertTrue(names.isFed(2, Set.of(1, 3)));
    assertFalse(names.isFed(4, Set.of(1, 3)));
    assertTrue(names.isFed(4, Set.of(1, 4)));
    assertTrue(names.isFed(1, Set.of(4)), "references hear whatever plays");
    assertTrue(names.isFed(5, Set.of(4)), "references hear whatever plays");
  }
}
