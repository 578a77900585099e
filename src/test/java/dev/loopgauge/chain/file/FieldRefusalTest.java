package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a chain file with several computers, places and patches is refused, and with what word. */
class FieldRefusalTest {
  private static final String HEAD =
      """
      sample-rate: 48000
      block-size: 64
      hosts: { truck: { block-size: 256 } }
      stages: { desk: { ms: 1 }, air: { metres: 3 }, camera: { frames: 2 } }
      groups: { in: [desk, air], dry: [desk] }
      positions: { row-a: { direct-metres: 2, throw-metres: { pa: 12 } }, far: { throw-metres: { fill: 3 } } }
      """;

  /** A path on line 8: {@code p: { listener: house, ... }}. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "stages: [dsk]                          | 8:34 | a known stage, found 'dsk'   | 'desk' is the nearest",
        "stages: [drx]                          | 8:34 | a known stage, found 'drx'   | 'dry' is the nearest",
        "stages: [desk], loudspeaker: pb        | 8:54 | a known loudspeaker, found 'pb' | 'pa' is the nearest",
        "stages: [desk], loudspeaker: pa, positions: [row-b] | 8:70 | a known position, found 'row-b' | 'row-a'",
        "stages: [desk], loudspeaker: pa, positions: [far] | 8:70 | a position with a throw from 'pa', found 'far' | add pa to the throw-metres of far",
        "stages: [desk], loudspeaker: pa, positions: [row-a, row-a] | 8:77 | each position once | take one",
        "stages: [desk], loudspeaker: pa, positions: [] | 8:69 | a list of at least one position | one",
        "stages: [desk], positions: [row-a]     | 8:41 | a loudspeaker beside positions, found none | say which",
        "stages: [desk, air], loudspeaker: pa   | 8:40 | no stage of air beside a loudspeaker, found 'air' | take it out",
        "stages: [in], loudspeaker: pa          | 8:34 | no stage of air beside a loudspeaker, found 'air' | throw-metres",
        "stages: [desk], loudspeaker: pa, direct-metres: 3 | 8:58 | one direct distance, found direct-metres in the path and in position 'row-a' | keep that of the position",
        "stages: [desk], patch: { send: 2 }     | 8:41 | return in a patch, found none | send: 2, return: 2",
        "stages: [desk], patch: { send: 0, return: 2 } | 8:56 | send as a whole number from 1 to 1024, found '0' | digits",
        "stages: [desk], patch: { send: 1, return: 2, agianst: 1 } | 8:70 | found 'agianst' | 'against'",
        "stages: [desk], patch: { send: 1, return: 2, against: x } | 8:79 | against as a whole number | digits",
        "stages: [desk], expect: {}             | 8:49 | one of polarity, level-db | take expect out",
        "stages: [desk], expect: { polarity: turned } | 8:61 | a known polarity, found 'turned' | known are normal, inverted",
        "stages: [desk], expect: { level-tolerance-db: 1 } | 8:41 | level-db in expect, found none | level-db: -6",
        "stages: [desk], expect: { level-db: 101 } | 8:61 | from -100 to 100, found '101' | digits",
        "stages: [desk], expect: { response-tolerance-db: -1 } | 8:74 | from 0 to 100, found '-1' | digits",
        "stages: [desk], expect: { levle-db: 1 } | 8:51 | a key of expect, found 'levle-db' | 'level-db'",
        "stages: [in], loop: [drx]              | 8:46 | a known stage of this path, found 'drx' | 'dry'"
      })
  void badPathIsRefusedWhereItStands(String path, String at, String text, String hint) {
    assertRefused(HEAD + "paths:\n  p: { listener: house, " + path + " }\n", at, text, hint);
  }

  /** One line on line 3, above the paths. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "hosts: { truck: {} }                       | 3:17 | block-size or sample-rate | state at least one",
        "hosts: { truck: { blocksize: 64 } }        | 3:19 | a key of a host, found 'blocksize' | 'block-size'",
        "hosts: { truck: { block-size: 0 } }        | 3:31 | from 1 to 65536, found '0' | digits",
        "hosts: { truck: { sample-rate: 96 } }      | 3:32 | found '96'   | did you mean 96000?",
        "groups: { desk: [desk] }                   | 3:11 | a name that no stage has, found 'desk' | rename",
        "groups: { in: [dsk] }                      | 3:16 | a known stage, found 'dsk' | 'desk'",
        "groups: { in: [camera] }                   | 3:16 | a stage of sound, not one in frames | pictures",
        "groups: { in: [desk], out: [in] }          | 3:29 | a known stage, found 'in' | known are",
        "groups: { in: [] }                         | 3:15 | a list of at least one stage | one",
        "reference: { send: 1, return: 1, against: 2 } | 3:34 | a key of the reference, found 'against' | known",
        "reference: { return: 1 }                   | 3:1  | send in the reference, found none | send: 2",
        "positions: { x: { direct-metres: 2 } }     | 3:14 | throw-metres in a position, found none | main-pa",
        "positions: { x: { throw-metres: {} } }     | 3:33 | at least one loudspeaker | main-pa",
        "positions: { x: { throw-metres: { a: -1 } } } | 3:38 | from 0 to 1000000000, found '-1' | digits",
        "positions: { x: { throw-metres: { a: 1 }, throw-feet: { a: 3 } } } | 3:43 | one list of throws | keep one",
        "positions: { x: { direct-metres: 2, direct-feet: 6, throw-metres: { a: 1 } } } | 3:37 | one direct distance in the position | keep one",
        "positions: { x: { thrwo-metres: { a: 1 } } } | 3:19 | found 'thrwo-metres' | 'throw-metres'"
      })
  void badSectionIsRefusedWhereItStands(String section, String at, String text, String hint) {
    String yaml =
        "sample-rate: 48000\nblock-size: 64\n"
            + section
            + "\nstages: { desk: { ms: 1 }, camera: { frames: 2 } }\n"
            + "paths: { p: { listener: house, stages: [desk] } }\n";
    assertRefused(yaml, at, text, hint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "desk: { ms: 1, host: trukc } | 2:32 | a known host, found 'trukc' | 'truck' is the nearest",
        "desk: { ms: 0,9 }            | 2:25 | a decimal point, found '0,9' | did you mean 0.9? write a decimal point",
        "desk: { ms: 0,9, tolerance-ms: 0,9 } | 2:25 | a decimal point, found '0,9' | 0.9",
        "desk: { ms: \"0,9\" }        | 2:23 | found '0,9' | did you mean 0.9? write a decimal point"
      })
  void badStageIsRefusedWhereItStands(String stage, String at, String text, String hint) {
    String yaml =
        "sample-rate: 48000\nstages: { " + stage + " }\nhosts: { truck: { block-size: 256 } }\n";
    assertRefused(yaml, at, text, hint);
  }

  @ParameterizedTest
  @CsvSource({"96, 96000", "44.1, 44100", "48k, 48000", "48 kHz, 48000", "192, 192000"})
  void rateInKilohertzIsAskedAbout(String written, String meant) {
    assertRefused(
        "sample-rate: " + written + "\nstages: { a: { ms: 1 } }\n",
        "1:14",
        "found '" + written + "'",
        "did you mean " + meant + "?");
  }

  private static void assertRefused(String yaml, String at, String text, String hint) {
    ChainFormatException e =
        assertThrows(ChainFormatException.class, () -> ChainParser.parse(yaml, "rig.yaml"), yaml);
    String[] parts = e.getMessage().split(": expected ", 2);
    assertEquals("rig.yaml:" + at, parts[0], e.getMessage());
    assertTrue(("expected " + parts[1]).contains(text), e.getMessage());
    assertTrue(e.hint().contains(hint), e.getMessage() + " / " + e.hint());
  }
}
