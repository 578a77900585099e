package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavWriterTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final Signal SHORT = Signal.of(RATE, 0.5, -0.5, 0.25);

  @TempDir Path folder;

  @Test
  void writesAPlainHeaderForSixteenBits() throws Exception {
    byte[] expected =
        WavBytes.riff(
            WavBytes.fmt(1, 1, 48_000, 16),
            WavBytes.chunk("data", WavBytes.le(2, 16384, -16384, 8192)));

    assertArrayEquals(expected, written(List.of(SHORT), WavEncoding.PCM_16));
  }

  @Test
  void writesAnExtensibleHeaderForTwentyFourBitsAndPadsOddData() throws Exception {
    byte[] expected =
        WavBytes.riff(
            WavBytes.extensible(1, 1, 48_000, 24, 24),
            WavBytes.chunk("data", WavBytes.le(3, 0x400000, -0x400000, 0x200000)));

    assertArrayEquals(expected, written(List.of(SHORT), WavEncoding.PCM_24));
  }

  @Test
  void writesFloatsWithTheirSampleCount() throws Exception {
    byte[] expected =
        WavBytes.riff(
            WavBytes.chunk("fmt ", WavBytes.join(WavBytes.plain(3, 1, 48_000, 32), new byte[2])),
            WavBytes.chunk("fact", WavBytes.le(4, 3)),
            WavBytes.chunk("data", WavBytes.floats(0.5f, -0.5f, 0.25f)));

    assertArrayEquals(expected, written(List.of(SHORT), WavEncoding.FLOAT_32));
  }

  @Test
  void writesAnExtensibleHeaderForMoreThanTwoChannels() throws Exception {
    byte[] bytes = written(Collections.nCopies(3, SHORT), WavEncoding.FLOAT_32);

    byte[] expected = WavBytes.riff(WavBytes.extensible(3, 3, 48_000, 32, 32));
    assertArrayEquals(Arrays.copyOfRange(expected, 12, 60), Arrays.copyOfRange(bytes, 12, 60));
  }

  @ParameterizedTest
  @EnumSource
  void givesBackWhatItWroteWithinHalfAStep(WavEncoding encoding) throws Exception {
    long seed = 11;
    Random random = new Random(seed);
    List<Signal> channels =
        Stream.generate(() -> Signal.of(RATE, random.doubles(10_001, -1, 1).toArray()))
            .limit(5)
            .toList();
    Path path = folder.resolve("five.wav");

    WavWriter.write(path, channels, encoding);

    double halfStep = encoding.floating() ? 0x1p-25 : Math.scalb(0.5, 1 - 8 * encoding.bytes());
    try (WavFile file = WavFile.open(path)) {
      assertEquals(5, file.channels());
      for (int c = 0; c < 5; c++) {
        double[] expected = channels.get(c).toArray();
        // Samples within the last half step below full scale can be a whole step off.
        assertArrayEquals(
            expected,
            file.channel(c + 1).toArray(),
            2 * halfStep,
            "seed " + seed + " channel " + c);
      }
    }
  }

  static Stream<Arguments> samplesThatCannotBeWritten() {
    return Stream.of(
        Arguments.of(WavEncoding.PCM_16, 1.0001),
        Arguments.of(WavEncoding.PCM_24, -1.0001),
        Arguments.of(WavEncoding.PCM_32, Double.NaN),
        Arguments.of(WavEncoding.FLOAT_32, Double.POSITIVE_INFINITY),
        Arguments.of(WavEncoding.FLOAT_32, 1e39),
        Arguments.of(WavEncoding.FLOAT_64, Double.NaN));
  }

  @ParameterizedTest
  @MethodSource("samplesThatCannotBeWritten")
  void refusesSamplesItCannotTellAndLeavesNothing(WavEncoding encoding, double sample)
      throws Exception {
    Path path = folder.resolve("a.wav");

    var refused =
        assertThrows(
            AudioFileException.class,
            () -> WavWriter.write(path, List.of(Signal.of(RATE, 0, sample)), encoding));

    assertTrue(refused.getMessage().contains("sample 1 of channel 1 is " + sample));
    assertLeftAlone();
  }

  @Test
  void writesFloatsBeyondFullScale() throws Exception {
    Path path = folder.resolve("a.wav");
    WavWriter.write(path, List.of(Signal.of(RATE, 1.5)), WavEncoding.FLOAT_32);

    try (WavFile file = WavFile.open(path)) {
      assertEquals(1.5, file.channel(1).at(0));
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void neverOverwrites(boolean brokenLink) throws Exception {
    Path path = folder.resolve("a.wav");
    if (brokenLink) {
      Files.createSymbolicLink(path, folder.resolve("nowhere"));
    } else {
      Files.writeString(path, "precious");
    }

    var refused =
        assertThrows(
            AudioFileException.class,
            () -> WavWriter.write(path, List.of(SHORT), WavEncoding.PCM_16));

    assertTrue(refused.getMessage().endsWith("the file exists and is not overwritten"));
    assertLeftAlone(path);
    assertTrue(brokenLink || Files.readString(path).equals("precious"));
  }

  @Test
  void whatAKilledWriterLeftBlocksNothing() throws Exception {
    Path part = Files.writeString(folder.resolve("a.wav.part"), "precious");
    Path path = folder.resolve("a.wav");

    WavWriter.write(path, List.of(SHORT), WavEncoding.PCM_16);

    try (WavFile file = WavFile.open(path)) {
      assertEquals(SHORT.length(), file.channel(1).length());
    }
    assertEquals("precious", Files.readString(part));
  }

  @Test
  void saysThatTheFolderIsMissing() {
    Path path = folder.resolve("none").resolve("a.wav");

    var refused =
        assertThrows(
            AudioFileException.class,
            () -> WavWriter.write(path, List.of(SHORT), WavEncoding.PCM_16));

    assertEquals(path + ": it can't be written: no such folder", refused.getMessage());
  }

  static Stream<List<Signal>> channelsThatMakeNoFile() {
    return Stream.of(
        List.of(),
        List.of(Signal.silence(RATE, 0)),
        List.of(SHORT, Signal.silence(RATE, 4)),
        List.of(SHORT, Signal.silence(new SampleRate(44_100), 3)),
        Collections.nCopies(65, SHORT));
  }

  @ParameterizedTest
  @MethodSource("channelsThatMakeNoFile")
  void refusesChannelsThatMakeNoFile(List<Signal> channels) throws Exception {
    assertThrows(
        IllegalArgumentException.class,
        () -> WavWriter.write(folder.resolve("a.wav"), channels, WavEncoding.PCM_16));
    assertLeftAlone();
  }

  @Test
  void refusesMoreThanAWavFileHolds() throws Exception {
    Signal long1 = Signal.silence(RATE, 8_400_000);

    var refused =
        assertThrows(
            AudioFileException.class,
            () ->
                WavWriter.write(
                    folder.resolve("a.wav"), Collections.nCopies(64, long1), WavEncoding.FLOAT_64));

    assertTrue(refused.getMessage().contains("less than 4 GiB"), refused.getMessage());
    assertLeftAlone();
  }

  private byte[] written(List<Signal> channels, WavEncoding encoding) throws Exception {
    Path path = folder.resolve("a.wav");
    WavWriter.write(path, channels, encoding);
    assertLeftAlone(path);
    return Files.readAllBytes(path);
  }

  private void assertLeftAlone(Path... expected) throws IOException {
    try (Stream<Path> found = Files.list(folder)) {
      assertEquals(List.of(expected), found.toList());
    }
  }
}
