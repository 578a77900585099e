package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;

/** Chains of invented rigs, written as chain files. */
final class Yaml {
  private Yaml() {}

  static Chain chain(String yaml) {
    try {
      return ChainParser.parse(yaml, "rig.yaml");
    } catch (ChainFormatException e) {
      throw new AssertionError(e.getMessage() + " (" + e.hint() + ")", e);
    }
  }
}
