package dev.loopgauge.fuzz;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainFiles;
import dev.loopgauge.chain.file.ChainParser;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Chain files, down to the delay of each path. */
record ChainTarget() implements Target {
  @Override
  public List<byte[]> seeds() {
    return List.of(
        ChainFiles.THEATRE.getBytes(StandardCharsets.UTF_8),
        ChainFiles.FIELD.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void check(byte[] input) throws Exception {
    String text = new String(input, StandardCharsets.UTF_8);
    Refusal.orRead(
        () -> {
          Chain chain = ChainParser.parse(text, "rig.yaml");
          chain.paths().values().forEach(path -> ChainBudget.of(chain, path).delay());
          chain.pictures().values().forEach(chain::delay);
        });
  }
}
