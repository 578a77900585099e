package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files of many gigabytes, with holes in them so that they take no room. */
class LargeWavFileTest {
  private static final long GIB = 1L << 30;

  @TempDir Path folder;

  @Test
  void readsTheLastSamplesOfA64ChannelRf64FileOf10Gib() throws Exception {
    long frames = 10 * GIB / 192;
    byte[] ds64 = WavBytes.le(8, 192 * frames + 72, 192 * frames, frames);
    byte[] header =
        WavBytes.join(
            WavBytes.ascii("RF64"),
            WavBytes.le(4, -1),
            WavBytes.ascii("WAVE"),
            WavBytes.chunk("ds64", WavBytes.join(ds64, new byte[4])),
            WavBytes.extensible(1, 64, 48_000, 24, 24),
            WavBytes.ascii("data"),
            WavBytes.le(4, -1));
    byte[] lastSample = WavBytes.le(3, 0x600000);
    Path path = sparse(header, 192 * frames - 3, lastSample);

    try (WavFile file = WavFile.open(path)) {
      assertEquals(frames, file.frames());
      assertArrayEquals(new double[] {0, 0.75}, file.channel(64, frames - 2, 2).toArray());
      assertArrayEquals(new double[] {0, 0}, file.channel(63, frames - 2, 2).toArray());
    }
  }

  @Test
  void readsPast2GibInAPlainFile() throws Exception {
    long dataBytes = 3 * GIB;
    byte[] header =
        WavBytes.join(
            WavBytes.ascii("RIFF"),
            WavBytes.le(4, dataBytes + 36),
            WavBytes.ascii("WAVE"),
            WavBytes.fmt(1, 2, 48_000, 16),
            WavBytes.ascii("data"),
            WavBytes.le(4, dataBytes));
    Path path = sparse(header, dataBytes - 2, WavBytes.le(2, -16384));

    try (WavFile file = WavFile.open(path)) {
      assertEquals(dataBytes / 4, file.frames());
      assertEquals(-0.5, file.channel(2, dataBytes / 4 - 1, 1).at(0));
    }
  }

  /** A writer that counts in 32 bits starts again from 0 at 4 GiB. */
  @Test
  void refusesAPlainFileWhoseSizeWrappedAround() throws Exception {
    byte[] header =
        WavBytes.join(
            WavBytes.ascii("RIFF"),
            WavBytes.le(4, 1036),
            WavBytes.ascii("WAVE"),
            WavBytes.fmt(1, 1, 48_000, 16),
            WavBytes.ascii("data"),
            WavBytes.le(4, 1000));
    Path path = sparse(header, 4 * GIB + 998, WavBytes.le(2, 1));

    var refused = assertThrows(AudioFileException.class, () -> WavFile.open(path));

    assertTrue(
        refused.getMessage().endsWith("to be 1000 bytes, found 4294967296 more after it"),
        refused.getMessage());
  }

  @Test
  void refusesToLoadAChannelThatMemoryCannotHold() throws Exception {
    long frames = Integer.MAX_VALUE - 100L;
    byte[] header =
        WavBytes.join(
            WavBytes.ascii("RIFF"),
            WavBytes.le(4, -1),
            WavBytes.ascii("WAVE"),
            WavBytes.fmt(1, 1, 48_000, 16),
            WavBytes.ascii("data"),
            WavBytes.le(4, -1));
    Path path = sparse(header, 2 * frames - 2, WavBytes.le(2, 1));

    try (WavFile file = WavFile.open(path)) {
      var refused = assertThrows(AudioFileException.class, () -> file.channel(1));
      assertTrue(refused.getMessage().endsWith("found " + frames), refused.getMessage());
    }
  }

  private Path sparse(byte[] header, long at, byte[] contents) {
    Path file = folder.resolve("large.wav");
    try (FileChannel channel =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE_NEW,
            StandardOpenOption.SPARSE,
            StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(header));
      channel.write(ByteBuffer.wrap(contents), header.length + at);
      return file;
    } catch (IOException tooSmall) {
      return abort("this file system holds no file of that size: " + tooSmall.getMessage());
    }
  }
}
