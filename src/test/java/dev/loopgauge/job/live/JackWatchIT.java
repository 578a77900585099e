package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.audioserver.ProgrammeClient;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.report.watch.WatchLine;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
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

  /** By how many samples the path moves, and back; all of them by -Dloopgauge.full=true. */
  private static final List<Integer> MOVES =
      Boolean.getBoolean("loopgauge.full") ? List.of(64, 1, 256) : List.of(64);

  @TempDir Path folder;

  /** Hears the watch on its own thread. */
  private static final class Heard implements WatchListener {
    final BlockingQueue<WatchLine> events = new ArrayBlockingQueue<>(100);
    final BlockingQueue<List<WatchLine>> states = new ArrayBlockingQueue<>(1000);

    @Override
    public void starts(List<String> paths, String announcement) {
      assertTrue(announcement.contains("Plays nothing"), announcement);
    }

    @Override
    public void states(List<WatchLine> now) {
      states.add(now);
    }

    @Override
    public void happens(WatchLine event) {
      events.add(event);
    }

    @Override
    public void notes(String sentence) {
      System.out.println(sentence);
    }

    /** Waits until so many more rounds were read. */
    void await(int rounds) throws InterruptedException {
      states.clear();
      for (int i = 0; i < rounds; i++) {
        assertTrue(states.poll(30, TimeUnit.SECONDS) != null, "no state came");
      }
    }
  }

  private WatchRequest request() throws Exception {
    return new WatchRequest(
        Files.writeString(folder.resolve("quarry.yaml"), CHAIN),
        Optional.empty(),
        new DeviceChoice(
            Optional.of("jack"),
            Optional.empty(),
            Optional.of("rig"),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        2,
        1,
        Optional.empty(),
        RigChoice.FLAWLESS,
        KeepChoice.NONE);
  }

  @Test
  void tellsEachChangeOfTheDelayUnderIt() throws Exception {
    Heard heard = new Heard();
    StopSign stop = new StopSign();
    Site site = new Site(Adapters.of(() -> List.of(new JackBackend())), Person.nobody(), Map.of());
    ExecutorService thread = Executors.newSingleThreadExecutor();
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient rig =
            DelayClient.start(
                server, "rig", DelayLine.of(0), DelayLine.of(MOVED), DelayLine.of(100));
        ProgrammeClient programme =
            ProgrammeClient.start(server, 5, List.of("rig:in_1", "rig:in_2", "rig:in_3"))) {
      Future<Answer> watch = thread.submit(() -> new WatchJob(request()).run(site, heard, stop));
      heard.await(12);
      int at = MOVED;
      for (int more : MOVES) {
        at = changed(heard, rig, at, MOVED + more, "starts");
        at = changed(heard, rig, at, MOVED, "ends");
      }
      stop.stop();
      Answer answer = watch.get(20, TimeUnit.SECONDS);
      System.out.print(answer.document().text());
      assertEquals(Ending.OUTSIDE, answer.ending());
      assertEquals(List.of(), List.copyOf(heard.events));
    } finally {
      stop.stop();
      thread.shutdownNow();
    }
  }

  private static int changed(Heard heard, DelayClient rig, int from, int to, String phase)
      throws Exception {
    rig.changeDelay(2, to);
    WatchLine event = heard.events.poll(30, TimeUnit.SECONDS);
    assertTrue(event != null, "nothing was told of " + from + " to " + to);
    System.out.print(event.text());
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
