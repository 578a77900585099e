package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A channel that is read where it is asked for. */
class WavChannelTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int LENGTH = 200_000;

  @TempDir private Path folder;
  private Path file = Path.of("");

  @BeforeEach
  void write() throws AudioFileException {
    file = folder.resolve("two.wav");
    WavWriter.write(file, List.of(noise(1), noise(2)), WavEncoding.PCM_24);
  }

  private static Signal noise(long seed) {
    return Signal.of(RATE, new SplittableRandom(seed).doubles(LENGTH, -1, 1).toArray());
  }

  @Test
  void readsAsTheWholeChannelDoes() throws AudioFileException {
    try (WavFile recording = WavFile.open(file)) {
      Samples second = recording.samples(2);
      assertEquals(LENGTH, second.length());
      assertEquals(RATE, second.rate());
      double[] whole = recording.channel(2).toArray();
      assertArrayEquals(whole, second.slice(0, LENGTH).toArray());
      for (int from : new int[] {-3, 0, 99_999, LENGTH - 2, LENGTH + 5}) {
        double[] part = new double[7];
        second.copyTo(from, part, 1, 5);
        double[] expected = new double[7];
        recording.channel(2).copyTo(from, expected, 1, 5);
        assertArrayEquals(expected, part, "from " + from);
      }
    }
  }

  @Test
  void aStretchEndsInSilence() throws AudioFileException {
    try (WavFile recording = WavFile.open(file)) {
      Samples stretch = recording.samples(1).stretch(1000, 10);
      double[] around = stretch.slice(-2, 12).toArray();
      double[] whole = recording.channel(1).toArray();
      double[] expected = new double[14];
      System.arraycopy(whole, 1000, expected, 2, 10);
      assertArrayEquals(expected, around);
    }
  }

  @Test
  void aMissingChannelIsRefusedWhenAskedFor() throws AudioFileException {
    try (WavFile recording = WavFile.open(file)) {
      assertThrows(AudioFileException.class, () -> recording.samples(3));
    }
  }

  @Test
  void aFileThatBecomesShorterIsSaid() throws AudioFileException, IOException {
    try (WavFile recording = WavFile.open(file)) {
      Samples first = recording.samples(1);
      try (RandomAccessFile cut = new RandomAccessFile(file.toFile(), "rw")) {
        cut.setLength(1000);
      }
      UnreadableRecordingException thrown =
          assertThrows(UnreadableRecordingException.class, () -> first.slice(0, LENGTH));
      assertEquals(thrown.getCause().getMessage(), thrown.getMessage());
    }
  }
}
