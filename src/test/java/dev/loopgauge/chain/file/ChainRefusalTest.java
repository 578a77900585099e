package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChainRefusalTest {
  private static final String HEAD = "sample-rate: 48000\nblock-size: 64\n";
  private static final String STAGES =
      "stages:\n  console: { ms: 1 }\n  camera: { frames: 2 }\n  network: { samples: 4 }\n";
  private static final String PATHS =
      "paths:\n  vocal: { listener: house, stages: [console, network] }\n";

  /** A stage on line 4 from column 10 on: {@code a: { ... }}. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "meters: 2              | 4:8  | a key of a stage, found 'meters'  | 'metres' is the nearest",
        "sampels: 2             | 4:8  | found 'sampels'                   | 'samples' is the nearest",
        "toleranse-ms: 2, ms: 1 | 4:8  | found 'toleranse-ms'              | 'tolerance-ms' is the",
        "milliseconds: 2        | 4:8  | found 'milliseconds'              | known are samples, ms,",
        "note: nothing else     | 4:3  | a delay in the stage, found none  | state one of samples, ms",
        "samples: 1, ms: 2      | 4:20 | one delay in the stage, found ms beside samples | keep one",
        "ms: 2, frames: 2       | 4:15 | found frames beside ms            | make two stages",
        "ms: 2, ms: 3           | 4:15 | found 'ms' again, first on line 4 | take one of the two out",
        "ms: -2                 | 4:12 | ms as a number from 0 to 1000000000, found '-2' | no unit",
        "ms: .nan               | 4:12 | found '.nan'                      | digits",
        "ms: NaN                | 4:12 | found 'NaN'                       | digits",
        "ms: .inf               | 4:12 | found '.inf'                      | digits",
        "ms: 1e999              | 4:12 | found '1e999'                     | digits",
        "ms: 1e10               | 4:12 | found '1e10'                      | digits",
        "ms: 0x10               | 4:12 | found '0x10'                      | digits",
        "ms: 1f                 | 4:12 | found '1f'                        | digits",
        "ms: 2 ms               | 4:12 | found '2 ms'                      | no unit",
        "ms:                    | 4:11 | found nothing                     | digits",
        "ms: [1]                | 4:12 | found a list                      | digits",
        "ms: {a: 1}             | 4:12 | found pairs                       | digits",
        "packets: 4             | 4:3  | packet-time-us in a stage, found none | packet-time-us: 1000",
        "packets: 4, packet-time-us: 0  | 4:36 | a packet-time-us above 0, found '0'   | 1000",
        "samples: 4, packet-time-us: 9  | 4:20 | packets beside packet-time-us, found samples | packets",
        "ms: 1, tolerance-ms: -1        | 4:29 | found '-1'                    | digits",
        "ms: 1, tolerance-ms: 1, tolerance-samples: 1 | 4:32 | one tolerance in the stage | keep one",
        "ms: 1, compensated: maybe      | 4:28 | a known answer, found 'maybe' | known are yes, no,",
        "ms: 1, note: ''                | 4:21 | expected note, found nothing  | write text"
      })
  void badStageIsRefusedWhereItStands(String stage, String at, String text, String hint) {
    String yaml = HEAD + "stages:\n  a: { " + stage + " }\n" + "paths: {}\n";
    assertRefused(yaml, at, text, hint);
  }

  /** A path on line 8: {@code p: { ... }}. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "listener: house, stages: [consol] | 8:34 | a known stage, found 'consol'  | 'console' is the",
        "listener: house, stages: [camera] | 8:34 | a stage of sound, not one in frames | under pictures",
        "listener: house, stages: []       | 8:33 | a list of at least one stage, found an empty list | at least one",
        "listener: house, stages:          | 8:32 | a list of at least one stage, found nothing | at least one",
        "listener: house, stages: console  | 8:33 | a list of at least one stage, found 'console' | [one, two]",
        "listener: house                   | 8:3  | stages in a path, found none    | add it",
        "stages: [console]                 | 8:3  | listener in a path, found none  | listener: house",
        "listener: in-era, stages: [console] | 8:18 | a known listener, found 'in-era' | 'in-ear'",
        "listener: HOUSE, stages: [console]  | 8:18 | a known listener, found 'HOUSE'  | 'house'",
        "listener: house, stages: [console], loop: [network] | 8:51 | stage of this path | console",
        "listener: house, stages: [console], loop: [] | 8:50 | stage of this path | at least one",
        "listener: house, stages: [console], picture: cam | 8:53 | a known picture, found 'cam' | none",
        "listener: house, stages: [console], instrument: sox | 8:56 | found 'sox'   | 'sax'",
        "listener: house, stages: [console], direct-metres: 1, direct-feet: 3 | 8:62 | one direct distance in the path, found direct-feet beside direct-metres | keep one",
        "listener: house, stages: [console], direct-metres: -1 | 8:59 | from 0 to 1000000000, found '-1' | digits",
        "listener: house, stages: [console], returns-to-talker: oui | 8:63 | a known answer, found 'oui' | known are yes, no",
        "listener: house, stages: [console], input: '' | 8:51 | expected input, found nothing | write text",
        "listener: house, stage: [console] | 8:25 | a key of a path, found 'stage' | 'stages'"
      })
  void badPathIsRefusedWhereItStands(String path, String at, String text, String hint) {
    assertRefused(HEAD + STAGES + "paths:\n  p: { " + path + " }\n", at, text, hint);
  }

  /** Whole sections, from line 9 on. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "pictures: { c: { stages: [camera] } }    | 9:13 | frame-rate in a picture, found none | 25",
        "pictures: { c: { frame-rate: 29.96, stages: [camera] } } | 9:30 | found '29.96' | 30000/1001",
        "pictures: { c: { frame-rate: 29.98, stages: [camera] } } | 9:30 | found '29.98' | did you mean 30000/1001?",
        "pictures: { c: { frame-rate: 24.5, stages: [camera] } } | 9:30 | found '24.5' | fraction",
        "pictures: { c: { frames: 3 } }           | 9:13 | frame-rate in a picture, found none | 25",
        "pictures: { c: { frames: 3, ms: 50 } }   | 9:29 | found ms beside frames | make stages",
        "pictures: { c: { frame-rate: 25 } }      | 9:13 | found none | frames, ms, stages",
        "pictures: { c: { ms: -50 } }             | 9:22 | found '-50' | decimal point",
        "pictures: { c: { frame-rate: 25/0, stages: [camera] } }  | 9:30 | found '25/0'  | fraction",
        "pictures: { c: { frame-rate: 0, stages: [camera] } }     | 9:30 | found '0'     | fraction",
        "pictures: { c: { frame-rate: -25, stages: [camera] } }   | 9:30 | found '-25'   | fraction",
        "pictures: { c: { frame-rate: 25, stages: [camara] } }    | 9:43 | found 'camara' | 'camera'",
        "pictures:                                | 9:10 | expected pictures as 'name: value' pairs, found nothing | one pair a line",
        "mixes: { m: [vocl] }                     | 9:14 | a known path, found 'vocl' | 'vocal'",
        "mixes: { m: [] }                         | 9:13 | a list of at least one path, found an empty list | one",
        "mixes: { m: [vocal, vocal] }             | 9:21 | each path once in the mix, found 'vocal' | out",
        "mixes: { m: [{ pth: vocal }] }           | 9:16 | a key of a path of a mix, found 'pth' | 'path'",
        "mixes: { m: [{ level-db: -6 }] }         | 9:14 | path in a path of a mix, found none | level-db",
        "mixes: { m: [{ path: vocl }] }           | 9:22 | a known path, found 'vocl' | 'vocal'",
        "mixes: { m: [{ path: vocal, offset-ms: -8 }] } | 9:40 | from 0 to 1000, found '-8' | digits",
        "mixes: { m: [{ path: vocal, level-db: 101 }] } | 9:39 | from -100 to 100, found '101' | digits",
        "mixes: { m: [[vocal]] }                  | 9:14 | a path of a mix as 'name: value' pairs | pair",
        "listeners: { hous: { limit-ms: 3 } }     | 9:14 | found 'hous'        | 'house'",
        "listeners: { house: { limit: 3 } }       | 9:23 | found 'limit'       | limit-ms",
        "listeners: { house: {} }                 | 9:21 | caution-ms or limit-ms | take the entry",
        "listeners: { house: { caution-ms: 16 } } | 9:35 | from 0 to 15, found '16' | digits",
        "mix: { m: [vocal] }                      | 9:1  | a key of a chain file | mixes",
        "stages: { b: { ms: 1 } }                 | 9:1  | found 'stages' again, first on line 3 | out",
        "[a]: 1                                   | 9:1  | a name, found a list  | text",
        "? [a]                                    | 9:3  | a name, found a list  | text",
        "air-temperature: 60                      | 9:18 | from -20 to 50, found '60' | digits"
      })
  void badSectionIsRefusedWhereItStands(String section, String at, String text, String hint) {
    assertRefused(HEAD + STAGES + PATHS + section + "\n", at, text, hint);
  }

  @ParameterizedTest
  @CsvSource({
    "7999, found '7999'", "768001, found '768001'", "-48000, found '-48000'",
    "48k, found '48k'", "48000.0, found '48000.0'", "99999999999, found '99999999999'"
  })
  void sampleRateOutOfRangeIsRefused(String rate, String found) {
    assertRefused(
        "sample-rate: " + rate + "\n" + STAGES + PATHS, "1:14", found, "write digits only");
  }

  @ParameterizedTest
  @CsvSource({"0", "-64", "65537", "64.5"})
  void blockSizeOutOfRangeIsRefused(String size) {
    assertRefused(
        "sample-rate: 48000\nblock-size: " + size + "\n" + STAGES + PATHS,
        "2:13",
        "block-size in samples as a whole number from 1 to 65536, found '" + size + "'",
        "digits only");
  }

  @Test
  void whatAChainFileMustHaveIsAskedFor() {
    assertRefused(STAGES + PATHS, "1:1", "sample-rate in a chain file, found none", "48000");
    assertRefused(HEAD + PATHS, "1:1", "stages in a chain file, found none", "console");
    assertRefused(HEAD + STAGES, "1:1", "paths in a chain file, found none", "vocal");
    assertRefused(
        "sample-rate: 48000\nstages: { a: { blocks: 1 } }\n"
            + "paths: { p: { listener: house, stages: [a] } }",
        "1:1",
        "block-size in a chain file, found none",
        "counts blocks");
    assertRefused(HEAD + "stages: {}\n" + PATHS, "3:9", "at least one entry", "write one");
  }

  @Test
  void whatIsNoChainFileIsRefused() {
    assertRefused("", "1:1", "found an empty file", "sample-rate");
    assertRefused("# nothing yet\n\n", "1:1", "found an empty file", "sample-rate");
    assertRefused("hello", "1:1", "found 'hello'", "one pair a line");
    assertRefused("- a\n- b", "1:1", "found a list", "one pair a line");
    assertRefused("RIFF\0\0WAVE", "1:5", "plain text, found the character U+0000", "UTF-8");
    assertRefused("a: b: c", "1:5", "expected YAML", "colons");
    assertRefused("a: [1, 2\nb: 3", "2:2", "expected YAML", "brackets");
    assertRefused("a:\n\t- b", "2:1", "expected spaces, found a tab", "indent with spaces");
    assertRefused("a:\n  \t- b", "2:3", "expected spaces, found a tab", "indent with spaces");
    assertRefused(HEAD + "---\n" + HEAD, "3:1", "expected YAML", "check");
  }

  @Test
  void messageIsOneLineHoweverWildTheText() {
    String wild = "x\\n\\e[31m" + "y".repeat(5000);
    ChainFormatException e = refusal("\"" + wild + "\": 1\n" + HEAD + STAGES + PATHS);
    assertFalse(e.getMessage().chars().anyMatch(Character::isISOControl), e.getMessage());
    assertTrue(e.getMessage().length() < 250, e.getMessage());
  }

  private static void assertRefused(String yaml, String at, String text, String hint) {
    ChainFormatException e = refusal(yaml);
    String[] parts = e.getMessage().split(": expected ", 2);
    assertEquals("rig.yaml:" + at, parts[0], e.getMessage());
    assertTrue(("expected " + parts[1]).contains(text), e.getMessage());
    assertTrue(e.hint().contains(hint), e.getMessage() + " / " + e.hint());
  }

  private static ChainFormatException refusal(String yaml) {
    return assertThrows(
        ChainFormatException.class, () -> ChainParser.parse(yaml, "rig.yaml"), yaml);
  }
}
