package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class HostTest {
  @Test
  void hostIsWhatIsMarkedAndWhatStandsBetween() {
    Chain chain = ChainFiles.theatre();
    assertEquals(
        new Host(
            List.of("stage-box-in", "console"),
            List.of("host-blocks", "host-fixed", "limiter"),
            List.of("stage-box-out")),
        Host.on(chain, chain.path("vocal-house")));
    Chain unmarked = ChainFiles.rig("ms: 1", "blocks: 1", "ms: 2", "blocks: 1", "ms: 1");
    assertEquals(
        new Host(List.of("s0"), List.of("s1", "s2", "s3"), List.of("s4")),
        Host.on(unmarked, unmarked.path("all")));
  }

  @Test
  void pathThatNeverEntersTheHostIsAllBeforeIt() {
    Chain chain = ChainFiles.theatre();
    assertEquals(
        new Host(List.of("stage-box-in", "console", "stage-box-out"), List.of(), List.of()),
        Host.on(chain, chain.path("vocal-in-ear")));
  }
}
