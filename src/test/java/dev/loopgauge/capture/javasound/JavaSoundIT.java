package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Java Sound through ALSA's JACK plugin to a real server and a rig of known delays. */
@NeedsAudioServer
@Timeout(60)
class JavaSoundIT {
  private static final int[] DELAYS = {0, 1, 47, 480, 1_024, 3_001};
  private static final double INVERTED_TWELVE_DB_DOWN = -0.25;

  @TempDir Path folder;

  @ParameterizedTest(name = "block size {0}, buffer {1}")
  @CsvSource({"128, 8192", "512, 16384", "1024, 32768"})
  void findsKnownDelaysExactlyTwentyTimesInARow(int blockSize, int buffer) throws Exception {
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.STRETCH, blockSize, lines());
        Takes takes = rig.takes(AlsaRig.RATE, buffer, 20, 8_192)) {
      assertEquals(TakesProcess.USABLE, takes.next());
      int offset = -1;
      for (int take = 0; take < 20; take++) {
        assertEquals(TakesProcess.TAKE, takes.next());
        String heard = takes.next();
        assertExact(heard);
        offset = take == 0 ? lag(heard, 0) : offset;
        assertEquals(offset, lag(heard, 0), "the offset moved in take " + take);
        assertTrue(offset >= 0 && offset < 16 * 1_024, "offset " + offset);
      }
    }
  }

  @Test
  void saysThatTheServerDied() throws Exception {
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.STRETCH, 1_024, lines());
        Takes takes = rig.takes(AlsaRig.RATE, 16_384, 1, 10 * AlsaRig.RATE)) {
      assertEquals(TakesProcess.USABLE, takes.next());
      assertEquals(TakesProcess.TAKE, takes.next());
      Thread.sleep(500);
      rig.server().kill();
      String said = takes.next();
      assertTrue(
          said.startsWith(TakesProcess.FAILED + " TIMED_OUT")
              || said.startsWith(TakesProcess.FAILED + " GONE"),
          said);
    }
  }

  /** A rig that stands still for 200 ms makes the server lose blocks, as a card in trouble does. */
  @Test
  void neverTurnsADropoutIntoAWrongDelay() throws Exception {
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.LOSE, 1_024, lines());
        Takes takes = rig.takes(AlsaRig.RATE, 8_192, 10, 24_000)) {
      assertEquals(TakesProcess.USABLE, takes.next());
      assertEquals(TakesProcess.TAKE, takes.next());
      Thread.sleep(300);
      rig.client().pause();
      Thread.sleep(200);
      rig.client().resume();
      Set<Integer> offsets = new HashSet<>();
      for (String said : takes.rest()) {
        if (said.startsWith(TakesProcess.FAILED)) {
          assertTrue(said.startsWith(TakesProcess.FAILED + " SHORT"), said);
        } else if (!said.equals(TakesProcess.TAKE)) {
          assertExact(said);
          offsets.add(lag(said, 0));
        }
      }
      assertTrue(offsets.size() <= 1, "the offset moved without a failure: " + offsets);
    }
  }

  /**
   * Through the layer that converts, 32 kHz read every delay 977 ppm short, and four channels of it
   * took the process down in the system's library.
   */
  @ParameterizedTest(name = "{0} channels")
  @ValueSource(ints = {1, 2, 4, 6})
  void refusesEachRateButTheServersOwn(int channels) throws Exception {
    DelayLine[] lines =
        Stream.generate(() -> DelayLine.of(0)).limit(channels).toArray(DelayLine[]::new);
    int[] arguments = {8_000, channels, 0, 1, 100, 32_000, 44_100, 88_200, 176_400};
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.STRETCH, 1_024, lines);
        Takes takes = Takes.start(rig.server().environment(), rig.config(), arguments)) {
      assertEquals(TakesProcess.USABLE, takes.next());
      for (int rate : new int[] {8_000, 32_000, 44_100, 88_200, 176_400}) {
        assertEquals(
            TakesProcess.FAILED
                + " UNSUPPORTED_FORMAT \"sends [default]\" doesn't run at %d Hz; it runs at 48000 Hz."
                    .formatted(rate),
            takes.next());
      }
    }
  }

  @Test
  void refusesASecondChannelOfACardThatHasOne() throws Exception {
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.STRETCH, 1_024, DelayLine.of(480));
        Takes takes =
            Takes.start(rig.server().environment(), rig.config(), AlsaRig.RATE, 2, 0, 1, 100)) {
      List<String> said = takes.rest();
      assertEquals(
          TakesProcess.FAILED
              + " TOO_FEW_CHANNELS \"sends [default]\" has 1 send; send 2 was asked for.",
          said.get(said.size() - 1));
    }
  }

  @Test
  void saysThatThereIsNoDevice() throws Exception {
    Path empty = Files.createFile(folder.resolve("empty.conf"));
    try (Takes takes = Takes.start(Map.of(), empty, AlsaRig.RATE, 2, 0, 1, 100)) {
      assertEquals(TakesProcess.UNUSABLE, takes.next());
      String said = takes.next();
      assertTrue(said.startsWith(TakesProcess.FAILED + " BACKEND_UNUSABLE"), said);
    }
  }

  private static DelayLine[] lines() {
    return IntStream.of(DELAYS)
        .mapToObj(delay -> DelayLine.of(delay).withGain(delay == 0 ? 1 : INVERTED_TWELVE_DB_DOWN))
        .toArray(DelayLine[]::new);
  }

  private static void assertExact(String heard) {
    for (int i = 1; i < DELAYS.length; i++) {
      assertEquals(DELAYS[i], lag(heard, i) - lag(heard, 0), "return " + (i + 1) + " of " + heard);
      double gain = Double.parseDouble(heard.split(" ", -1)[i].split("/", -1)[1]);
      assertEquals(INVERTED_TWELVE_DB_DOWN, gain, 1e-4, heard);
    }
  }

  private static int lag(String heard, int index) {
    return Integer.parseInt(heard.split(" ", -1)[index].split("/", -1)[0]);
  }
}
