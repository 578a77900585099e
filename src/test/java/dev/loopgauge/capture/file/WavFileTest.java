package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.signal.SampleRate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavFileTest {
  private static final byte[] MONO_16 = WavBytes.fmt(1, 1, 48_000, 16);
  private static final byte[] SAMPLES = WavBytes.le(2, 16384, -32768, 8192);

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "1, 16, PCM_16",
    "1, 24, PCM_24",
    "1, 32, PCM_32",
    "3, 32, FLOAT_32",
    "3, 64, FLOAT_64"
  })
  void readsEveryEncodingPlainAndExtensible(int tag, int bits, WavEncoding encoding)
      throws Exception {
    byte[] data = WavBytes.chunk("data", encoding.encode(new double[] {0.5, -0.25, 0.125, -1}));
    byte[] plain = WavBytes.riff(WavBytes.fmt(tag, 2, 96_000, bits), data);
    byte[] extensible = WavBytes.riff(WavBytes.extensible(tag, 2, 96_000, bits, bits), data);

    for (byte[] bytes : new byte[][] {plain, extensible}) {
      try (WavFile file = open(bytes)) {
        assertEquals(new SampleRate(96_000), file.rate());
        assertEquals(encoding, file.encoding());
        assertEquals(2, file.channels());
        assertEquals(2, file.frames());
        assertArrayEquals(new double[] {0.5, 0.125}, file.channel(1).toArray());
        assertArrayEquals(new double[] {-0.25, -1}, file.channel(2).toArray());
      }
    }
  }

  /** Microsoft, WAVE_FORMAT_EXTENSIBLE: valid bits are the highest ones of their container. */
  @Test
  void readsTwentyValidBitsFromTheTopOfTheirContainer() throws Exception {
    byte[] half = WavBytes.le(3, 0x400000);

    try (WavFile file =
        open(
            WavBytes.riff(
                WavBytes.extensible(1, 1, 48_000, 24, 20), WavBytes.chunk("data", half)))) {
      assertEquals(0.5, file.channel(1).at(0));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 8, 17, 64})
  void keepsChannelsApart(int channels) throws Exception {
    long[] numbers = new long[3 * channels];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = 256L * (i % channels) + i / channels;
    }
    byte[] data = WavBytes.chunk("data", WavBytes.le(2, numbers));

    try (WavFile file = open(WavBytes.riff(WavBytes.fmt(1, channels, 48_000, 16), data))) {
      for (int c = 0; c < channels; c++) {
        double[] expected = {c / 128.0, (256 * c + 1) / 32768.0, (256 * c + 2) / 32768.0};
        assertArrayEquals(expected, file.channel(c + 1).toArray());
      }
    }
  }

  @Test
  void skipsChunksBeforeAndAfterTheDataAndTheirPadding() throws Exception {
    byte[] bytes =
        WavBytes.riff(
            WavBytes.chunk("JUNK", new byte[28]),
            WavBytes.chunk("bext", new byte[603]),
            MONO_16,
            WavBytes.chunk("iXML", WavBytes.ascii("<BWFXML/>")),
            WavBytes.chunk("LIST", new byte[5]),
            WavBytes.chunk("data", SAMPLES),
            WavBytes.chunk("LIST", new byte[7]));

    assertSamples(bytes);
  }

  @Test
  void readsDataOfOddLength() throws Exception {
    byte[] data = WavBytes.chunk("data", WavBytes.le(3, 0x200000));
    byte[] bytes = WavBytes.riff(WavBytes.fmt(1, 1, 48_000, 24), data, WavBytes.chunk("LIST"));

    try (WavFile file = open(bytes)) {
      assertArrayEquals(new double[] {0.25}, file.channel(1).toArray());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"RF64", "BW64"})
  void takesLongSizesFromTheirChunk(String form) throws Exception {
    byte[] ds64 = WavBytes.join(WavBytes.le(8, 0, SAMPLES.length, 3), WavBytes.le(4, 1));
    byte[] entry = WavBytes.join(WavBytes.ascii("axml"), WavBytes.le(8, 2));
    byte[] bytes =
        WavBytes.join(
            WavBytes.ascii(form + "\0\0\0\0WAVE"),
            WavBytes.chunk("ds64", WavBytes.join(ds64, entry)),
            MONO_16,
            WavBytes.join(WavBytes.ascii("axml"), WavBytes.le(4, -1), new byte[2]),
            WavBytes.join(WavBytes.ascii("data"), WavBytes.le(4, -1), SAMPLES),
            WavBytes.chunk("chna", new byte[4]));

    assertSamples(bytes);
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "-1, 0", "-1, -1", "0, -1", "36, -1"})
  void readsToTheEndWhenTheLengthWasNeverFilledIn(long riffSize, long dataSize) throws Exception {
    byte[] bytes =
        WavBytes.join(
            WavBytes.ascii("RIFF"),
            WavBytes.le(4, riffSize),
            WavBytes.ascii("WAVE"),
            MONO_16,
            WavBytes.ascii("data"),
            WavBytes.le(4, dataSize),
            SAMPLES,
            new byte[1]);

    assertSamples(bytes);
  }

  @Test
  void readsAStretchAcrossBlocks() throws Exception {
    long[] numbers = new long[700_000];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = i % 32768;
    }
    byte[] data = WavBytes.chunk("data", WavBytes.le(2, numbers));

    try (WavFile file = open(WavBytes.riff(MONO_16, data))) {
      double[] stretch = file.channel(1, 3, 699_990).toArray();
      for (int i = 0; i < stretch.length; i++) {
        assertEquals(numbers[i + 3] / 32768.0, stretch[i]);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"-1, 1", "0, 4", "3, 1", "9223372036854775807, 2", "0, -1"})
  void refusesAStretchOutsideTheFile(long from, int frames) throws Exception {
    try (WavFile file = open(WavBytes.riff(MONO_16, WavBytes.chunk("data", SAMPLES)))) {
      assertThrows(IllegalArgumentException.class, () -> file.channel(1, from, frames));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 2})
  void refusesAChannelThatIsNotThere(int channel) throws Exception {
    try (WavFile file = open(WavBytes.riff(MONO_16, WavBytes.chunk("data", SAMPLES)))) {
      var refused = assertThrows(AudioFileException.class, () -> file.channel(channel));
      assertEquals(
          folder.resolve("a.wav") + ": expected a channel from 1 to 1, found " + channel,
          refused.getMessage());
    }
  }

  @Test
  void saysSoWhenTheFileBecomesShorterWhileItIsRead() throws Exception {
    try (WavFile file = open(WavBytes.riff(MONO_16, WavBytes.chunk("data", SAMPLES)))) {
      Files.write(folder.resolve("a.wav"), new byte[46]);
      var refused = assertThrows(AudioFileException.class, () -> file.channel(1));
      assertEquals(
          folder.resolve("a.wav") + ": expected 6 bytes at byte 44, found 2", refused.getMessage());
    }
  }

  private void assertSamples(byte[] bytes) throws Exception {
    try (WavFile file = open(bytes)) {
      assertArrayEquals(new double[] {0.5, -1, 0.25}, file.channel(1).toArray());
    }
  }

  private WavFile open(byte[] bytes) throws IOException, AudioFileException {
    return WavFile.open(Files.write(folder.resolve("a.wav"), bytes));
  }
}
