package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainFiles;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.FrameRate;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.Mix;
import dev.loopgauge.chain.MixEntry;
import dev.loopgauge.chain.PacketTime;
import dev.loopgauge.chain.Picture;
import dev.loopgauge.chain.Stage;
import dev.loopgauge.chain.UnknownPathException;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ChainParserTest {
  private static final String SMALLEST =
      "sample-rate: 44100\nstages: { a: { ms: 1 } }\npaths: { p: { listener: wedge, stages: [a] } }";

  @Test
  void readsEveryPartOfAChainFile() {
    Chain chain = ChainFiles.theatre();
    assertEquals("Harbour Theatre, spring musical", chain.name());
    assertEquals(new SampleRate(48_000), chain.rate());
    assertEquals(64, chain.blockSize());
    assertEquals(20, chain.airTemperatureC());
    assertEquals(
        Map.of(
            "house-mix",
            new Mix(
                "house-mix",
                List.of(new MixEntry("vocal-house", 0, 0), new MixEntry("vocal-in-ear", 0, 0)))),
        chain.mixes());
    assertEquals(
        new Picture(
            "cameras",
            Optional.of(new FrameRate(60_000, 1001)),
            Optional.empty(),
            List.of("camera")),
        chain.pictures().get("cameras"));
  }

  @Test
  void readsEveryWayOfStatingADelay() {
    Map<String, Stage> stages = ChainFiles.theatre().stages();
    assertEquals(new Delay.Samples(219), stages.get("host-fixed").delay());
    assertEquals(new Delay.Milliseconds(0.8), stages.get("console").delay());
    assertEquals(new Delay.Blocks(2), stages.get("host-blocks").delay());
    assertEquals(new Delay.Packets(4, new PacketTime(1000)), stages.get("network").delay());
    assertEquals(new Delay.Metres(1.8), stages.get("wedge-throw").delay());
    assertEquals(new Delay.Feet(100), stages.get("delay-tower").delay());
    assertEquals(new Delay.Frames(2), stages.get("camera").delay());
  }

  @Test
  void readsWhatStandsBesideADelay() {
    Map<String, Stage> stages = ChainFiles.theatre().stages();
    assertEquals(
        new Stage(
            "stage-box-in",
            new Delay.Samples(12),
            new Delay.Samples(1),
            Optional.of("converter data sheet"),
            Optional.empty(),
            Compensation.NO,
            Optional.empty()),
        stages.get("stage-box-in"));
    assertEquals(new Delay.Milliseconds(0.05), stages.get("console").tolerance());
    assertEquals(Optional.of("host"), stages.get("limiter").reportedBy());
    assertEquals(Compensation.YES, stages.get("limiter").compensated());
    assertEquals(new Delay.Samples(0), stages.get("stage-box-out").tolerance());
    assertEquals(Optional.empty(), stages.get("stage-box-out").note());
  }

  @Test
  void readsWhatAPathSays() {
    Chain chain = ChainFiles.theatre();
    assertEquals(
        new ChainPath(
            "vocal-in-ear",
            Listener.IN_EAR,
            List.of("stage-box-in", "console", "stage-box-out"),
            Optional.empty(),
            Optional.empty(),
            Optional.of(Instrument.VOICE),
            "stage-box-in",
            Optional.empty(),
            false,
            Optional.empty(),
            Optional.empty(),
            Expectation.NONE),
        chain.path("vocal-in-ear"));
    assertEquals(Optional.of(List.of("console")), chain.path("field-tower").loop());
    assertEquals(Optional.of(new Delay.Metres(12)), chain.path("vocal-house").direct());
    assertEquals(Optional.of(new Delay.Feet(110)), chain.path("field-tower").direct());
    assertEquals("lead", chain.path("field-tower").input());
    assertTrue(chain.path("field-tower").returnsToTalker());
    assertFalse(chain.path("vocal-house").returnsToTalker());
    assertEquals(Optional.of("cameras"), chain.path("stream-mix").picture());
  }

  @Test
  void readsWhatAMixSaysOfItsPaths() {
    Chain chain =
        ChainFiles.parsed(
            SMALLEST.replace("[a] }", "[a] }, q: { listener: wedge, stages: [a] }")
                + "\nmixes: { m: [p, { path: q, offset-ms: 8, level-db: -6 }] }");
    assertEquals(
        List.of(new MixEntry("p", 0, 0), new MixEntry("q", 8, -6)),
        chain.mixes().get("m").entries());
  }

  @Test
  void keepsTheOrderOfTheFile() {
    assertEquals(
        List.of("vocal-house", "vocal-in-ear", "vocal-wedge", "field-tower", "stream-mix"),
        List.copyOf(ChainFiles.theatre().paths().keySet()));
  }

  @Test
  void smallestFileGetsItsDefaults() {
    Chain chain = ChainFiles.parsed(SMALLEST);
    assertEquals("rig.yaml", chain.name());
    assertEquals(20, chain.airTemperatureC());
    assertFalse(chain.countsBlocks());
    assertTrue(ChainFiles.theatre().countsBlocks());
  }

  @Test
  void readsFilesOfOtherEditors() {
    assertEquals(ChainFiles.parsed(SMALLEST), ChainFiles.parsed("\uFEFF" + SMALLEST));
    assertEquals(ChainFiles.parsed(SMALLEST), ChainFiles.parsed(SMALLEST.replace("\n", "\r\n")));
    assertEquals(ChainFiles.parsed(SMALLEST), ChainFiles.parsed("---\n" + SMALLEST + "\n...\n"));
  }

  @Test
  void textIsOneLineHoweverItIsWritten() {
    Chain chain = ChainFiles.parsed("chain: |\n  Festival field,\n  second   day\n" + SMALLEST);
    assertEquals("Festival field, second day", chain.name());
  }

  @Test
  void coldAirIsNoNegativeNumberTooMany() {
    assertEquals(-5, ChainFiles.parsed("air-temperature: -5\n" + SMALLEST).airTemperatureC());
  }

  @Test
  void unknownPathNamesTheNearestOne() {
    Chain chain = ChainFiles.theatre();
    UnknownPathException near =
        assertThrows(UnknownPathException.class, () -> chain.path("vocal-hosue"));
    assertEquals(
        "expected a path of 'Harbour Theatre, spring musical', found 'vocal-hosue'",
        near.getMessage());
    assertEquals("'vocal-house' is the nearest known name", near.hint());
    UnknownPathException far = assertThrows(UnknownPathException.class, () -> chain.path("x"));
    assertEquals(
        "known are vocal-house, vocal-in-ear, vocal-wedge, field-tower, stream-mix", far.hint());
  }

  @Test
  void changedChainsAreCheckedToo() {
    Chain chain = ChainFiles.theatre();
    assertThrows(IllegalArgumentException.class, () -> chain.withBlockSize(0));
    assertThrows(IllegalArgumentException.class, () -> chain.withBlockSize(65_537));
    assertEquals(chain, chain.withBlockSize(128).withBlockSize(64));
  }
}
