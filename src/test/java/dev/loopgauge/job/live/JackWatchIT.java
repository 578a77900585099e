package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.audioserver.ProgrammeClient;
import dev.loopgauge.job.Ending;
import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.report.watch.WatchLine;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A watch on a real server: another client plays, and the rig's delay is changed under it. */
@NeedsAudioServer
@Timeout(240)
@SuppressWarnings("try") // The clients only have to run.
class JackWatchIT {
  private static final String CHAIN =
      """
      chain: Quarry Stage
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        blocks: { blocks: 2 }
        fixed:  { samples: 100 }
      paths:
        moved: { listener: house, stages: [blocks, fixed], patch: { send: 2, return: 2 } }
        other: { listener: stream, stages: [fixed], patch: { send: 3, return: 3 } }
      """;
  private static final int MOVED = 228;

  private static final String RECORDED_WORDS = "/usr/share/sounds/alsa";
  private static final String SENTENCES =
      "The host lost a block, and everything behind it is late. Which path is it? Nobody on stage"
          + " heard a click; the singer only felt that the wedge was somewhere else than before.";

  /** By how many samples the path moves, and back; all of them by -Dloopgauge.full=true. */
  private static final List<Integer> MOVES =
      Boolean.getBoolean("loopgauge.full") ? List.of(64, 1, 256) : List.of(64);

  @TempDir Path folder;

  @Test
  void tellsEachChangeOfTheDelayUnderIt() throws Exception {
    Path chain = Files.writeString(folder.resolve("quarry.yaml"), CHAIN);
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient rig =
            DelayClient.start(
                server, "rig", DelayLine.of(0), DelayLine.of(MOVED), DelayLine.of(100));
        ProgrammeClient programme =
            ProgrammeClient.start(server, 5, List.of("rig:in_1", "rig:in_2", "rig:in_3"));
        HeardWatch heard = HeardWatch.of(chain)) {
      heard.await(12);
      int at = MOVED;
      for (int more : MOVES) {
        at = changed(heard, rig, at, MOVED + more, "starts");
        at = changed(heard, rig, at, MOVED, "ends");
      }
      assertEquals(Ending.OUTSIDE, heard.end().ending());
      assertEquals(List.of(), List.copyOf(heard.events));
    }
  }

  /** Words that people spoke and words that a program speaks, with the pauses between them. */
  private Path speech() throws Exception {
    Path spoken = folder.resolve("spoken.wav");
    Path all = folder.resolve("speech.wav");
    run("espeak-ng", "-v", "en", "-s", "150", "-w", spoken.toString(), SENTENCES);
    List<String> sox = new ArrayList<>(List.of("sox", "-G"));
    for (String word : List.of("Front_Left", "Rear_Right", "Front_Center", "Side_Left")) {
      sox.add(RECORDED_WORDS + "/" + word + ".wav");
    }
    run(
        Stream.of(sox, List.of("-r", "48000", "-c", "1", "-b", "16", folder + "/words.wav"))
            .flatMap(List::stream)
            .toArray(String[]::new));
    run("sox", "-G", spoken.toString(), "-r", "48000", "-b", "16", folder + "/said.wav");
    run("sox", folder + "/words.wav", folder + "/said.wav", all.toString());
    return all;
  }

  private static void run(String... command) throws Exception {
    assertEquals(0, new ProcessBuilder(command).inheritIO().start().waitFor(), command[0]);
  }

  @Test
  @NeedsTool({"espeak-ng", "sox", RECORDED_WORDS})
  void followsPathsThroughSpokenWords() throws Exception {
    Path chain = Files.writeString(folder.resolve("quarry.yaml"), CHAIN);
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient rig =
            DelayClient.start(
                server, "rig", DelayLine.of(0), DelayLine.of(MOVED), DelayLine.of(100));
        ProgrammeClient programme =
            ProgrammeClient.start(server, speech(), List.of("rig:in_1", "rig:in_2", "rig:in_3"));
        HeardWatch heard = HeardWatch.of(chain)) {
      heard.await(20);
      assertEquals(List.of(), List.copyOf(heard.events));
      changed(heard, rig, MOVED, MOVED + 64, "starts");
      changed(heard, rig, MOVED + 64, MOVED, "ends");
      assertEquals(Ending.OUTSIDE, heard.end().ending());
      assertEquals(List.of(), List.copyOf(heard.events));
    }
  }

  private static int changed(HeardWatch heard, DelayClient rig, int from, int to, String phase)
      throws Exception {
    rig.changeDelay(2, to);
    WatchLine event = heard.event(from + " to " + to);
    assertEquals(WatchLine.Event.STEP, event.event(), event::text);
    assertEquals(Optional.of("moved"), event.path());
    assertEquals(phase, event.json().get("phase"));
    double change = event.what().step().orElseThrow().changeSamples().doubleValue();
    double uncertainty = event.what().step().orElseThrow().uncertaintySamples().doubleValue();
    assertEquals(to - from, change, uncertainty, event::text);
    heard.await(6);
    return to;
  }
}
