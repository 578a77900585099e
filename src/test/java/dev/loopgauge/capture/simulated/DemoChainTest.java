package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The theatre of the demo. */
final class DemoChainTest {
  private static final String FILE = "lantern-theatre.yaml";

  @Test
  void hasAPathForEveryListener() throws Exception {
    Set<Listener> heard =
        theatre().paths().values().stream()
            .map(path -> path.listener())
            .collect(Collectors.toCollection(() -> EnumSet.noneOf(Listener.class)));
    assertEquals(EnumSet.allOf(Listener.class), heard);
  }

  @Test
  void everySoundPathIsWithinItsLimit() throws Exception {
    Chain theatre = theatre();
    for (String name : List.of("vocal-house", "vocal-in-ear", "vocal-wedge")) {
      PathBudget budget = ChainBudget.of(theatre, theatre.path(name));
      assertTrue(budget.delay().ms() < 10, name + ": " + budget.delay().ms() + " ms");
    }
  }

  /** 12 + 24 + 38.4 + 128 + 86 + 48 + 24 + 11 samples, added by hand. */
  @Test
  void housePathIsAsLateAsItsStages() throws Exception {
    Chain theatre = theatre();
    PathBudget budget = ChainBudget.of(theatre, theatre.path("vocal-house"));
    assertEquals(371.4, budget.loop().samples(), 1e-9);
    assertEquals(3.96, budget.loopToleranceSamples(), 1e-9);
  }

  @Test
  void hostAtTwiceTheBlockIsBeyondTheTolerance() throws Exception {
    Chain theatre = theatre();
    List<Fault> left = List.of(FaultFormat.parse("block-size=128"));
    Rig rig = Rig.of(theatre, theatre.path("vocal-house"), left, theatre.rate());
    assertEquals(371.4 + 2 * 64, rig.loop().samples(), 1e-9);
  }

  @Test
  void hasMixesAndAPictureOfTwoFramesAtFifty() throws Exception {
    assertEquals(Set.of("front-rows", "on-stage"), theatre().mixes().keySet());
    assertEquals(40, theatre().delay(theatre().pictures().get("cameras")).ms(), 1e-9);
  }

  private static Chain theatre() throws IOException, ChainFormatException {
    try (InputStream in = Fault.class.getResourceAsStream("/dev/loopgauge/demo/" + FILE)) {
      String yaml = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return ChainParser.parse(yaml, FILE);
    }
  }
}
