package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;

/** A chain of one path to build rigs from; its loop is 418.4 samples at 48 kHz. */
final class Rigs {
  static final String PATH = "vocal-wedge";

  private static final String TEXT =
      """
      chain: Rehearsal room
      sample-rate: 48000
      block-size: 64
      stages:
        stage-box-in: { samples: 12 }
        console:      { ms: 0.8 }
        host-blocks:  { blocks: 2 }
        limiter:      { samples: 240 }
        wedge-throw:  { metres: 1.8 }
      paths:
        vocal-wedge:
          listener: wedge
          stages: [stage-box-in, console, host-blocks, limiter, wedge-throw]
      """;

  private Rigs() {}

  static Chain chain() {
    try {
      return ChainParser.parse(TEXT, "rehearsal.yaml");
    } catch (ChainFormatException e) {
      throw new AssertionError(e);
    }
  }
}
