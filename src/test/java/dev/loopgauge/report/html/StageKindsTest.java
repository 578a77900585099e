package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.report.plot.Lanes.Part;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StageKindsTest {
  private static final String CHAIN =
      """
      chain: Hall
      sample-rate: 48000
      block-size: 64
      stages:
        a:        { blocks: 2 }
        b:        { samples: 64, reported-by: host }
        c:        { packets: 1, packet-time-us: 1000 }
        d:        { metres: 3 }
        e:        { samples: 12, note: converter data sheet }
        main-desk: { ms: 0.8, note: between the converters }
        Stage-Box: { samples: 12 }
        boxed:    { samples: 3 }
      paths:
        p: { listener: house, stages: [a, b, c, d, e, main-desk, Stage-Box, boxed] }
      """;

  @ParameterizedTest
  @CsvSource({
    "a, HOST",
    "b, HOST",
    "c, NETWORK",
    "d, AIR",
    "e, CONVERTER",
    "main-desk, CONSOLE",
    "Stage-Box, CONVERTER",
    "boxed, OTHER"
  })
  void tellsKindsByUnitThenByNameThenByNote(String stage, Part kind) throws ChainFormatException {
    Chain chain = ChainParser.parse(CHAIN, "hall.yaml");
    assertEquals(kind, StageKinds.of(chain.stages().get(stage)));
  }
}
