package dev.loopgauge.journal;

import static dev.loopgauge.journal.Logged.CHAIN;
import static dev.loopgauge.journal.Logged.delay;
import static dev.loopgauge.journal.Logged.entry;
import static dev.loopgauge.journal.Logged.heading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Cause.Standing;
import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CausesTest {
  private static final Map<String, String> NONE = Map.of();

  /** The loop of the path is 408 samples by the chain file; it was measured 2 samples off that. */
  private static final Heading BEFORE =
      heading(0, "Friday", When.BEFORE, "vocal", delay(410, 0.04));

  private static Heading after(double samples) {
    return heading(0.2, "Friday", When.AFTER, "vocal", delay(samples, 0.04));
  }

  private static List<Cause> causes(Entry first, Entry second) {
    double later =
        second.heading().delay().orElseThrow().delay().samples()
            - first.heading().delay().orElseThrow().delay().samples();
    return Causes.of(first, second, new Latency(later, Logged.RATE), 0.06);
  }

  private static Entry before() {
    return entry(BEFORE, 64, CHAIN, NONE);
  }

  @Test
  void aRecordedBlockSizeThatMakesTheDifferenceExplainsIt() {
    List<Cause> causes = causes(before(), entry(after(538), 128, CHAIN, NONE));
    assertEquals(1, causes.size(), causes::toString);
    assertEquals("block-size", causes.get(0).name());
    assertEquals(Standing.EXPLAINS, causes.get(0).standing());
    assertEquals("block size was 64 samples, is 128 samples", causes.get(0).text());
  }

  @Test
  void aRecordedBlockSizeThatMakesAnotherDifferenceExplainsNothing() {
    List<Cause> causes = causes(before(), entry(after(170), 128, CHAIN, NONE));
    assertEquals(Standing.RECORDED, causes.get(0).standing());
    assertEquals("stage-absent", causes.get(1).name(), causes::toString);
    assertEquals(Standing.LIKELY, causes.get(1).standing());
  }

  @Test
  void anEditedChainFileThatStatesTheDifferenceExplainsIt() {
    String edited = CHAIN.replace("samples: 240", "samples: 300");
    List<Cause> causes = causes(before(), entry(after(470), 64, edited, NONE));
    assertEquals("chain-file", causes.get(0).name());
    assertEquals(Standing.EXPLAINS, causes.get(0).standing());
  }

  @Test
  void aSetUpThatChangedIsNamedBesideWhatIsLikely() {
    List<Cause> causes =
        causes(
            entry(BEFORE, 64, CHAIN, Map.of("network-latency", "1 ms")),
            entry(after(474), 64, CHAIN, Map.of("network-latency", "2 ms")));
    assertEquals("network-latency was 1 ms, is 2 ms", causes.get(0).text());
    assertEquals(Standing.RECORDED, causes.get(0).standing());
    assertEquals("extra-block", causes.get(1).name(), causes::toString);
  }

  /** Where nothing fits by the figures themselves, the desk's tolerance of 3 samples counts. */
  @Test
  void aBlockMoreIsFoundWhateverTheChainFileIsOffBy() {
    List<Cause> exact = causes(before(), entry(after(474), 64, CHAIN, NONE));
    assertTrue(exact.get(0).text().contains("3 blocks"), exact::toString);
    List<Cause> off = causes(before(), entry(after(476.5), 64, CHAIN, NONE));
    assertTrue(off.get(0).text().contains("3 blocks"), off::toString);
  }

  @Test
  void withoutAChainFileWholeBlocksAreStillSeen() {
    String broken = "no chain at all";
    List<Cause> more = causes(entry(BEFORE, 64, broken, NONE), entry(after(474), 64, broken, NONE));
    assertEquals("one block of 64 samples more; was a plug-in added?", more.get(0).text());
    List<Cause> less = causes(entry(BEFORE, 64, broken, NONE), entry(after(282), 64, broken, NONE));
    assertEquals("2 blocks of 64 samples less; was a plug-in taken out?", less.get(0).text());
    assertEquals(
        List.of(), causes(entry(BEFORE, 64, broken, NONE), entry(after(443), 64, broken, NONE)));
  }
}
