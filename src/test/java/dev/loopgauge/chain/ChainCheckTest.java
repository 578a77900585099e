package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChainCheckTest {
  /** Nothing is wrong with it and nothing is missing. */
  private static final String WHOLE =
      """
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      hosts: { truck: { block-size: 256 } }
      stages:
        desk: { ms: 1, tolerance-ms: 0.1 }
        blocks: { blocks: 2, host: truck, reported-by: truck }
        cam: { frames: 1 }
      paths:
        main: { listener: house, stages: [desk], loudspeaker: pa, patch: { send: 2, return: 2 } }
        mix: { listener: stream, stages: [desk, blocks], picture: cams, patch: { send: 2, return: 3 } }
      positions: { row-a: { direct-metres: 2, throw-metres: { pa: 12 } } }
      pictures: { cams: { frame-rate: 25, stages: [cam] } }
      """;

  private static List<String> found(String yaml) {
    return ChainCheck.of(ChainFiles.parsed(yaml)).stream()
        .map(finding -> finding.kind() + " " + finding.text())
        .toList();
  }

  @Test
  void wholeFileHasNothingToSay() {
    assertEquals(List.of(), found(WHOLE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "direct-metres: 2, | '' | MISSING main is heard without direct sound at row-a.",
        "', loudspeaker: pa' | '' | MISSING main is a house path without its direct sound.",
        "', patch: { send: 2, return: 3 }' | '' | MISSING mix has no patch: a round leaves it out.",
        "reference: { send: 1, return: 1 } | '' | MISSING main has a patch but no reference to be"
            + " measured against.",
        "return: 3 | return: 2 | WRONG main, mix are all on return 2.",
        "return: 3 | return: 1 | WRONG mix is on return 1, which is its reference.",
        "return: 3 | 'return: 3, against: 3' | WRONG mix is on return 3, which is its reference.",
        "', tolerance-ms: 0.1' | '' | MISSING main states no tolerance.",
        "reported-by: truck | reported-by: trukc | WRONG 'blocks' is reported by 'trukc', which is"
            + " no host of the file.",
        "', picture: cams' | '' | WRONG The picture 'cams' is never used.",
        "'desk, blocks' | desk | WRONG The stage 'blocks' is never used.",
        "', loudspeaker: pa' | '' | WRONG The position 'row-a' is never used.",
        "'host: truck, ' | '' | WRONG The host 'truck' is never used.",
        "'ms: 1, ' | 'ms: 1, compensated: unknown, ' | MISSING Does the desk compensate 'desk'? The"
            + " file says unknown.",
        "'block-size: 64' | 'block-size: 63' | WRONG rig.yaml:2:13: block-size 63 is unusual"
      })
  void saysWhatIsWrongOrMissing(String what, String instead, String expected) {
    assertTrue(WHOLE.contains(what), what);
    String changed = WHOLE.replace(what, instead);
    assertTrue(found(changed).contains(expected), found(changed).toString());
  }

  @Test
  void eachFindingSaysWhatToTryAndWhatIsWrongComesFirst() {
    List<CheckFinding> findings = ChainCheck.of(ChainFiles.theatre());
    assertTrue(findings.stream().noneMatch(finding -> finding.hint().isBlank()));
    List<CheckFinding.Kind> kinds = findings.stream().map(CheckFinding::kind).toList();
    assertEquals(kinds.stream().sorted().toList(), kinds);
    assertTrue(kinds.contains(CheckFinding.Kind.MISSING), findings.toString());
  }
}
