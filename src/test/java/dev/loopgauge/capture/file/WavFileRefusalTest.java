package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledIf;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavFileRefusalTest {
  private static final byte[] MONO_16 = WavBytes.fmt(1, 1, 48_000, 16);
  private static final byte[] DATA = WavBytes.chunk("data", WavBytes.le(2, 1, 2, 3, 4, 5, 6));

  @TempDir Path folder;

  static Stream<Arguments> untrueHeaders() {
    byte[] nan = WavBytes.floats(0, Float.NaN);
    return Stream.of(
        Arguments.of("expected a WAV file, found an empty one", new byte[0]),
        Arguments.of(
            "its data chunk should hold 12 bytes, found 8", cut(WavBytes.riff(MONO_16, DATA), 4)),
        Arguments.of(
            "its fmt chunk should hold 16 bytes, found 10", cut(WavBytes.riff(MONO_16), 6)),
        Arguments.of(
            "expected a chunk at byte 36, found the end of the file", WavBytes.riff(MONO_16)),
        Arguments.of(
            "expected a chunk at byte 36, found bytes that are none",
            WavBytes.riff(MONO_16, new byte[20], DATA)),
        Arguments.of(
            "expected a format chunk before the data, found none", WavBytes.riff(DATA, MONO_16)),
        Arguments.of("expected one format chunk, found two", WavBytes.riff(MONO_16, MONO_16, DATA)),
        Arguments.of("expected samples, found none", withData(MONO_16)),
        Arguments.of(
            "expected whole frames of 2 bytes, found 5 bytes of samples",
            withData(MONO_16, new byte[5])),
        Arguments.of(
            "expected its data to be 4 bytes, found 8 more after it",
            WavBytes.riff(MONO_16, WavBytes.ascii("data"), WavBytes.le(4, 4), new byte[12])),
        Arguments.of(
            "expected its data to be 0 bytes, found 12 more after it",
            WavBytes.riff(MONO_16, WavBytes.ascii("data"), new byte[16])),
        Arguments.of(
            "expected a format chunk of 16 bytes or more, found 14 bytes",
            withData(WavBytes.chunk("fmt ", cut(WavBytes.plain(1, 1, 48_000, 16), 2)), 1, 2)),
        Arguments.of(
            "expected 1 to 64 channels, found 0", withData(WavBytes.fmt(1, 0, 48_000, 16), 1)),
        Arguments.of(
            "expected 1 to 64 channels, found 65", withData(WavBytes.fmt(1, 65, 48_000, 16), 1)),
        Arguments.of(
            "expected a sample rate of 8000 to 768000 Hz, found 0 Hz",
            withData(WavBytes.fmt(1, 1, 0, 16), 1, 2)),
        Arguments.of(
            "expected a sample rate of 8000 to 768000 Hz, found 4294967295 Hz",
            withData(WavBytes.fmt(1, 1, -1, 16), 1, 2)),
        Arguments.of(
            "expected 16, 24 or 32-bit samples or floating point, found 8-bit whole numbers",
            withData(WavBytes.fmt(1, 1, 48_000, 8), 1, 2)),
        Arguments.of("found 16-bit floating point", withData(WavBytes.fmt(3, 1, 48_000, 16), 1, 2)),
        Arguments.of("found A-law", withData(WavBytes.fmt(6, 1, 48_000, 8), 1, 2)),
        Arguments.of("found A-law", withData(WavBytes.extensible(6, 1, 48_000, 8, 8), 1, 2)),
        Arguments.of("found mu-law", withData(WavBytes.fmt(7, 1, 48_000, 8), 1, 2)),
        Arguments.of("found ADPCM", withData(WavBytes.fmt(2, 1, 48_000, 4), 1, 2)),
        Arguments.of("found IMA ADPCM", withData(WavBytes.fmt(0x11, 1, 48_000, 4), 1, 2)),
        Arguments.of("found MP3", withData(WavBytes.fmt(0x55, 1, 48_000, 0), 1, 2)),
        Arguments.of(
            "found the format with tag 4660", withData(WavBytes.fmt(0x1234, 1, 48_000, 16), 1, 2)),
        Arguments.of(
            "expected frames of 4 bytes for 2 channels, found frames of 3 bytes",
            withData(patched(WavBytes.fmt(1, 2, 48_000, 16), 20, 3), 1, 2)),
        Arguments.of(
            "expected a format extension of 22 bytes or more, found a shorter one",
            withData(WavBytes.fmt(0xFFFE, 1, 48_000, 16), 1, 2)),
        Arguments.of(
            "expected a format extension of 22 bytes or more, found a shorter one",
            withData(patched(WavBytes.extensible(1, 1, 48_000, 16, 16), 24, 21), 1, 2)),
        Arguments.of(
            "expected at most 16 valid bits, found 24",
            withData(WavBytes.extensible(1, 1, 48_000, 16, 24), 1, 2)),
        Arguments.of(
            "found a sub-format that isn't known",
            withData(patched(WavBytes.extensible(1, 1, 48_000, 16, 16), 47, 0x72), 1, 2)),
        Arguments.of(
            "expected a data chunk, found more than 1000 other chunks",
            WavBytes.riff(MONO_16, manyChunks(), DATA)),
        Arguments.of("expected a 64-bit size of the data chunk, found none", rf64()),
        Arguments.of(
            "expected a 64-bit size of the data chunk, found 2^63 or more",
            rf64(WavBytes.chunk("ds64", WavBytes.le(8, 0, -5, 0, 0)))),
        Arguments.of(
            "its data chunk should hold 9223372036854775807 bytes, found 12",
            rf64(WavBytes.chunk("ds64", WavBytes.le(8, 0, Long.MAX_VALUE, 0, 0)))),
        Arguments.of("sample 1 of channel 1 is NaN", withData(WavBytes.fmt(3, 1, 48_000, 32), nan)),
        Arguments.of(
            "sample 0 of channel 1 is -Infinity",
            withData(WavBytes.fmt(3, 1, 48_000, 32), WavBytes.floats(Float.NEGATIVE_INFINITY))));
  }

  @ParameterizedTest
  @MethodSource("untrueHeaders")
  void saysWhatWasExpectedAndFound(String text, byte[] bytes) throws Exception {
    AudioFileException refused = refusal(bytes);

    assertTrue(refused.getMessage().endsWith(text), refused.getMessage());
    assertFalse(refused.hint().isBlank());
  }

  static Stream<Arguments> otherFiles() {
    return Stream.of(
        Arguments.of("MP3 audio", "ID3\u0004xxxxxxxxxxxx"),
        Arguments.of("MP3 or AAC audio", "\u00ff\u00fb\u0090xxxxxxxxxxxx"),
        Arguments.of("FLAC audio", "fLaC\0\0\0#xxxxxxxx"),
        Arguments.of("Ogg audio", "OggS\0\u0002xxxxxxxxxx"),
        Arguments.of("AIFF audio", "FORM\0\0\0#AIFFCOMM"),
        Arguments.of("CAF audio", "caff\0\u0001\0\0desc"),
        Arguments.of("MP4 audio or video", "\0\0\0 ftypM4A xxxx"),
        Arguments.of("Wave64 audio", "riff.\u0091\u00cf\u0011xxxxxxxx"),
        Arguments.of("big-endian WAV audio", "RIFX\0\0\0#WAVEfmt "),
        Arguments.of("AVI video", "RIFF\0\0\0#AVI LIST"),
        Arguments.of("a ZIP archive", "PK\u0003\u0004xxxxxxxxxxxx"),
        Arguments.of("text", "chain: Harbour Theatre\nsample-rate: 48000\n"),
        Arguments.of("text", "hi"),
        Arguments.of("neither that nor anything known", "\0\0\0\0\0\0\0\0\0\0\0\0\0"),
        Arguments.of("neither that nor anything known", "RIFF\0\0\0\0"));
  }

  @ParameterizedTest
  @MethodSource("otherFiles")
  void saysWhatAnotherKindOfFileLooksLike(String what, String start) throws Exception {
    byte[] bytes = start.getBytes(StandardCharsets.ISO_8859_1);

    AudioFileException refused = refusal(bytes);

    assertTrue(
        refused.getMessage().endsWith("expected a WAV file, found " + what), refused.getMessage());
  }

  @Test
  void saysHowToConvertOtherAudio() throws Exception {
    assertEquals(
        "convert it: ffmpeg -i " + folder.resolve("a.wav") + " -c:a pcm_s24le converted.wav",
        refusal(WavBytes.ascii("fLaC and so on")).hint());
  }

  @Test
  void quotesNamesWithSpacesInCommands() throws Exception {
    Path file = Files.writeString(folder.resolve("first night.wav"), "fLaC and so on");
    var refused = assertThrows(AudioFileException.class, () -> WavFile.open(file));

    assertTrue(refused.hint().contains("-i \"" + file + "\" -c:a"), refused.hint());
  }

  @Test
  void refusesAMissingFileAndAFolder() {
    assertTrue(
        assertThrows(AudioFileException.class, () -> WavFile.open(folder.resolve("none.wav")))
            .getMessage()
            .endsWith("none.wav: there is no such file"));
    assertTrue(
        assertThrows(AudioFileException.class, () -> WavFile.open(folder))
            .getMessage()
            .endsWith("expected a WAV file, found a folder"));
  }

  static boolean withoutDevices() {
    return !Files.exists(Path.of("/dev/zero"));
  }

  @Test
  @DisabledIf(value = "withoutDevices", disabledReason = "this system has no endless device")
  void refusesAnEndlessDevice() {
    assertThrows(AudioFileException.class, () -> WavFile.open(Path.of("/dev/zero")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"line\nbreak.wav", "bell\u0007.wav", "escape\u001b[31m.wav"})
  void keepsItsMessageOnOneLineWhateverTheName(String name) {
    var refused = assertThrows(AudioFileException.class, () -> WavFile.open(folder.resolve(name)));

    assertTrue(refused.getMessage().chars().noneMatch(Character::isISOControl));
  }

  private AudioFileException refusal(byte[] bytes) throws Exception {
    Path file = Files.write(folder.resolve("a.wav"), bytes);
    return assertThrows(
        AudioFileException.class,
        () -> {
          try (WavFile opened = WavFile.open(file)) {
            opened.channel(1);
          }
        });
  }

  private static byte[] withData(byte[] fmt, int... bytes) {
    byte[] data = new byte[bytes.length];
    IntStream.range(0, bytes.length).forEach(i -> data[i] = (byte) bytes[i]);
    return withData(fmt, data);
  }

  private static byte[] withData(byte[] fmt, byte[] data) {
    return WavBytes.riff(fmt, WavBytes.chunk("data", data));
  }

  private static byte[] rf64(byte[]... chunks) {
    return WavBytes.join(
        HexFormat.of().parseHex("52463634ffffffff57415645"),
        WavBytes.join(chunks),
        MONO_16,
        WavBytes.ascii("data"),
        WavBytes.le(4, -1),
        new byte[12]);
  }

  private static byte[] manyChunks() {
    byte[][] chunks = new byte[1000][];
    Arrays.fill(chunks, WavBytes.chunk("JUNK"));
    return WavBytes.join(chunks);
  }

  private static byte[] cut(byte[] bytes, int fewer) {
    return Arrays.copyOf(bytes, bytes.length - fewer);
  }

  private static byte[] patched(byte[] bytes, int at, int value) {
    byte[] changed = bytes.clone();
    changed[at] = (byte) value;
    return changed;
  }
}
