package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.capture.StreamContract;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Signal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A recording in place of a card streams as every adapter does, and then is over. */
class FileContractTest extends StreamContract {
  private static final int FRAMES = 30_001;
  private static final WavEncoding FLOATS = WavEncoding.FLOAT_32;

  @TempDir Path folder;
  private final double[] samples = new Random(18).doubles(2 * FRAMES, -1, 1).toArray();

  @Override
  protected AudioSession open(int sends, int returns) throws Exception {
    return open(IntStream.rangeClosed(1, returns).boxed().toList());
  }

  private FileSession open(List<Integer> channels) throws Exception {
    byte[] data = WavBytes.chunk("data", FLOATS.encode(samples));
    Path file = folder.resolve("show.wav");
    Files.write(file, WavBytes.riff(WavBytes.fmt(3, 2, 48_000, 32), data));
    return new FileSession(WavFile.open(file), channels);
  }

  @Override
  protected int channels() {
    return 2;
  }

  @Test
  void theStreamIsTheRecordingToItsEndAndThenIsOver() throws Exception {
    float[][] heard = new float[2][FRAMES];
    try (AudioSession session = open(List.of(2, 1))) {
      session.stream(into(heard));
    }
    assertArrayEquals(channel(1), heard[0]);
    assertArrayEquals(channel(0), heard[1]);
  }

  @Test
  void aChannelThatIsNotThereIsRefusedAtOnce() {
    assertThrows(AudioFileException.class, () -> open(List.of(3)));
  }

  @Test
  void nothingCanBePlayedToARecording() throws Exception {
    try (AudioSession session = open(List.of(1))) {
      Take take = new Take(List.of(Signal.silence(session.info().rate(), 10)), 100, List.of());
      CaptureException refused = assertThrows(CaptureException.class, () -> session.capture(take));
      assertEquals(CaptureException.Kind.UNSUPPORTED_FORMAT, refused.kind());
    }
  }

  @Test
  void aRecordingThatBecomesShorterEndsTheStreamAloud() throws Exception {
    try (AudioSession session = open(List.of(1))) {
      Files.write(folder.resolve("show.wav"), new byte[100]);
      CaptureException gone =
          assertThrows(CaptureException.class, () -> session.stream(into(new float[1][FRAMES])));
      assertEquals(CaptureException.Kind.GONE, gone.kind());
    }
  }

  private float[] channel(int from0) {
    float[] channel = new float[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      channel[i] = (float) samples[2 * i + from0];
    }
    return channel;
  }

  private static BlockListener into(float[][] heard) {
    return new BlockListener() {
      @Override
      public boolean block(long frame, float[][] returns, int length) {
        for (int i = 0; i < returns.length; i++) {
          System.arraycopy(returns[i], 0, heard[i], (int) frame, length);
        }
        return true;
      }

      @Override
      public void lost(LostFrames lost) {
        throw new AssertionError(lost);
      }
    };
  }
}
