package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.live.AudioSystem;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Block series on a real server. The rig sends its sound twice through an insert and gets it back:
 * no two programs can each wait for the other, so the server makes each way round one block late.
 */
@NeedsAudioServer
@Timeout(180)
@SuppressWarnings("try")
class LiveSeriesIT {
  private static final String[] RIG = {
    "series",
    "--live",
    "--backend=jack",
    "--block-sizes=256,512,1024,2048,4096",
    "--output=rig",
    "--input=rig",
    "--send=1",
    "--return=3",
    "--seconds=0.3",
    "--repeat=1",
    "--max-delay=0.2",
    "--yes",
    "--json"
  };

  private static final int ODD_SIZE = 1024;

  @TempDir Path folder;

  /** At one block size the rig is patched otherwise, as if somebody had pulled the wrong cable. */
  private record Repatched(JackBackend server) implements BlockSizeServer {
    @Override
    public int blockSize() throws CaptureException {
      return server.blockSize();
    }

    @Override
    public void setBlockSize(int samples) throws CaptureException {
      server.setBlockSize(samples);
    }

    @Override
    public String name() {
      return server.name();
    }

    @Override
    public Availability look() {
      return server.look();
    }

    @Override
    public AudioSession open(SessionRequest request) throws CaptureException {
      return server.open(blockSize() == ODD_SIZE ? onLineFour(request) : request);
    }

    private static SessionRequest onLineFour(SessionRequest request) {
      return new SessionRequest(
          request.output(), request.input(), List.of(4), List.of(4), request.rate(), 0);
    }
  }

  @Test
  void findsTheBlocksThatTheGraphMakesAndSetsTheServerBack() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 2048);
        DelayClient rig = rig(server);
        DelayClient insert = insert(server)) {
      Path err = folder.resolve("err");
      Run run = whole(() -> Jar.end(Jar.start(server.environment(), err, RIG), err));

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      assertTwoBlocksAnd219Samples(run);
      assertEquals(0, odd(run).size(), run.out());
      assertEquals(2048, new JackBackend().blockSize());
    }
  }

  @Test
  void oneSpoiledReadingStandsOut() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 2048);
        DelayClient rig = rig(server);
        DelayClient insert = insert(server)) {
      AudioSystem backends = Adapters.of(() -> List.of(new Repatched(new JackBackend())));
      Map<String, String> environment = Map.of("LOOPGAUGE_DATA", folder.toString());
      Run run = whole(() -> Run.on(false, "", environment, backends, RIG));

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      assertTwoBlocksAnd219Samples(run);
      assertEquals(1, odd(run).size(), run.out());
      assertEquals(ODD_SIZE, odd(run).get(0).get("blockSize"));
    }
  }

  /**
   * A virtual machine may lose sound at small blocks time after time; that is not the point here.
   */
  private static Run whole(Callable<Run> series) throws Exception {
    Run run = series.call();
    for (int again = 0; again < 3 && run.out().contains("no-reading"); again++) {
      run = series.call();
    }
    return run;
  }

  private static DelayClient rig(AudioServer server) throws Exception {
    return DelayClient.start(
        server, "rig", DelayLine.of(12), DelayLine.of(200), DelayLine.of(7), DelayLine.of(1000));
  }

  private static DelayClient insert(AudioServer server) throws Exception {
    DelayClient insert = DelayClient.start(server, "insert", DelayLine.of(0), DelayLine.of(0));
    for (int way = 1; way <= 2; way++) {
      server.patch("rig:out_" + way, "insert:in_" + way);
      server.patch("insert:out_" + way, "rig:in_" + (way + 1));
    }
    return insert;
  }

  private static void assertTwoBlocksAnd219Samples(Run run) {
    Map<?, ?> fit = (Map<?, ?>) run.json().get("fit");
    assertEquals(2, fit.get("roundedBlocks"), run.out());
    assertEquals(2, ((Number) fit.get("blocks")).doubleValue(), 0.01, run.out());
    assertEquals(219, ((Number) fit.get("fixedSamples")).doubleValue(), 0.1, run.out());
    assertEquals(
        List.of(256, 512, 1024, 2048, 4096),
        readings(run).map(reading -> reading.get("blockSize")).toList());
    assertTrue(run.err().contains("back to 2048 samples"), run.err());
  }

  private static Stream<Map<?, ?>> readings(Run run) {
    return ((List<?>) run.json().get("readings")).stream().map(reading -> (Map<?, ?>) reading);
  }

  private static List<Map<?, ?>> odd(Run run) {
    return readings(run).filter(reading -> reading.get("outlier").equals(true)).toList();
  }
}
