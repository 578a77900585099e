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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  @Test
  void saysAtWhichRateTheServerRuns() throws Exception {
    try (AlsaRig rig = AlsaRig.start(folder, Cycles.STRETCH, 1_024, lines());
        Takes takes = rig.takes(44_100, 0, 1, 100)) {
      List<String> said = takes.rest();
      String last = said.get(said.size() - 1);
      assertTrue(last.startsWith(TakesProcess.FAILED + " UNSUPPORTED_FORMAT"), last);
      assertTrue(last.contains("doesn't run at 44100 Hz; it opens at 48000"), last);
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
