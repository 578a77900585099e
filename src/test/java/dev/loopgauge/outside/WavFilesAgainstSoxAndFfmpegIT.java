package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.capture.file.WavWriter;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.DoubleBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files written here are read alike by sox and ffmpeg, and theirs are read alike here, to the last
 * digit. The speech is that of Debian's alsa-utils.
 */
@NeedsTool({"sox", "ffmpeg", "/usr/share/sounds/alsa/Front_Center.wav"})
class WavFilesAgainstSoxAndFfmpegIT {
  private static final String SPEECH = "/usr/share/sounds/alsa/Front_Center.wav";
  private static final SampleRate RATE = new SampleRate(96_000);
  private static final long SEED = 11;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Front_Center",
        "Front_Left",
        "Front_Right",
        "Noise",
        "Rear_Center",
        "Rear_Left",
        "Rear_Right",
        "Side_Left",
        "Side_Right"
      })
  void readsSpokenWordsAsBothDo(String name) throws Exception {
    String path = "/usr/share/sounds/alsa/" + name + ".wav";
    try (WavFile file = WavFile.open(Path.of(path))) {
      double[] samples = file.channel(1).toArray();
      assertEquals(48_000, file.rate().hertz());
      assertTrue(Signal.of(file.rate(), samples).peak() > 0.05);
      assertArrayEquals(readBySox(path, 1), samples);
      assertArrayEquals(readByFfmpeg(path, 1), samples);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "pcm_s16le, PCM_16",
    "pcm_s24le, PCM_24",
    "pcm_s32le, PCM_32",
    "pcm_f32le, FLOAT_32",
    "pcm_f64le, FLOAT_64"
  })
  void readsWhatFfmpegWrites(String codec, WavEncoding encoding) throws Exception {
    for (String form : new String[] {"never", "always"}) {
      String path = folder.resolve(codec + form + ".wav").toString();
      Tool.run(
          "ffmpeg",
          "-i",
          SPEECH,
          "-ac",
          "2",
          "-af",
          "volume=0.37",
          "-c:a",
          codec,
          "-rf64",
          form,
          path);

      assertReadAlike(path, encoding, readByFfmpeg(path, 2));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "signed, 16, PCM_16",
    "signed, 24, PCM_24",
    "signed, 32, PCM_32",
    "floating-point, 32, FLOAT_32",
    "floating-point, 64, FLOAT_64"
  })
  void readsWhatSoxWrites(String kind, String bits, WavEncoding encoding) throws Exception {
    String path = folder.resolve("sox.wav").toString();
    Tool.run("sox", SPEECH, "-e", kind, "-b", bits, path, "remix", "1", "1v0.371");

    assertReadAlike(path, encoding, readBySox(path, 2));
  }

  @ParameterizedTest
  @EnumSource
  void bothReadWhatWasWritten(WavEncoding encoding) throws Exception {
    for (int channels : new int[] {1, 2, 5}) {
      Path path = folder.resolve(encoding + "-" + channels + ".wav");
      WavWriter.write(path, noise(channels), encoding);

      try (WavFile file = WavFile.open(path)) {
        double[] written = interleaved(file);
        assertArrayEquals(written, readByFfmpeg(path.toString(), channels), "seed " + SEED);
        // sox holds samples as 32-bit whole numbers.
        assertArrayEquals(written, readBySox(path.toString(), channels), 0x1p-31, "seed " + SEED);
        assertEquals("96000", soxInfo("-r", path));
        assertEquals(channels + "", soxInfo("-c", path));
      }
    }
  }

  @Test
  void readsTheLastOf64ChannelsOfFfmpeg() throws Exception {
    Path path = folder.resolve("wide.wav");
    Path raw = folder.resolve("wide.raw");
    byte[] bytes = new byte[64 * 2 * 1000];
    new Random(SEED).nextBytes(bytes);
    Files.write(raw, bytes);
    Tool.run(
        "ffmpeg",
        "-f",
        "s16le",
        "-ar",
        "48000",
        "-ac",
        "64",
        "-i",
        raw.toString(),
        "-c:a",
        "pcm_s24le",
        path.toString());

    ByteBuffer expected = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    try (WavFile file = WavFile.open(path)) {
      double[] last = file.channel(64).toArray();
      for (int i = 0; i < 1000; i++) {
        assertEquals(expected.getShort(2 * (64 * i + 63)) / 32768.0, last[i], "seed " + SEED);
      }
    }
  }

  @Test
  void readsWhatFfmpegWroteToAPipe() throws Exception {
    Path path = folder.resolve("piped.wav");
    Files.write(path, Tool.run("ffmpeg", "-i", SPEECH, "-f", "wav", "-"));

    assertReadAlike(path.toString(), WavEncoding.PCM_16, readBySox(SPEECH, 1));
  }

  /** sox fills in a length near 2 GiB where it can't know it; the hint says how to mend that. */
  @Test
  void refusesWhatSoxWroteToAPipeAndSaysHowToMendIt() throws Exception {
    Path path = folder.resolve("piped.wav");
    Files.write(path, Tool.run("sh", "-c", "sox " + SPEECH + " -t wav - tempo 1.1 | cat"));

    var refused = assertThrows(AudioFileException.class, () -> WavFile.open(path));

    String command = "sox --ignore-length " + path + " ";
    assertTrue(refused.hint().contains(command), refused.hint());
    Path saved = folder.resolve("saved.wav");
    Tool.run((command + saved).split(" "));
    assertReadAlike(saved.toString(), WavEncoding.PCM_16, readBySox(saved.toString(), 1));
  }

  @ParameterizedTest
  @CsvSource({
    "flac, flac, FLAC audio", "vorbis, ogg, Ogg audio", "aac, m4a, MP4 audio or video",
    "aac, adts, MP3 or AAC audio", "pcm_s16be, aiff, AIFF audio", "pcm_s16le, caf, CAF audio",
    "pcm_s16le, w64, Wave64 audio", "pcm_s16be, au, AU audio", "mp2, mp2, MP3 or AAC audio",
    "flac, matroska, Matroska or WebM audio or video"
  })
  void saysWhatFilesLabelledWavLookLikeAndHowToConvertThem(String codec, String form, String what)
      throws Exception {
    String container = form.equals("m4a") ? "mp4" : form;
    Path path = folder.resolve("renamed.wav");
    Tool.run(
        "ffmpeg",
        "-i",
        SPEECH,
        "-ac",
        "2",
        "-c:a",
        codec,
        "-strict",
        "-2",
        "-f",
        container,
        path.toString());

    var refused = assertThrows(AudioFileException.class, () -> WavFile.open(path));

    assertEquals(path + ": expected a WAV file, found " + what, refused.getMessage());
    assertConverts(refused.hint());
  }

  @ParameterizedTest
  @CsvSource({
    "pcm_alaw, A-law",
    "pcm_mulaw, mu-law",
    "adpcm_ms, ADPCM",
    "adpcm_ima_wav, IMA ADPCM",
    "pcm_u8, 8-bit whole numbers"
  })
  void namesTheEncodingItDoesNotReadAndHowToConvertIt(String codec, String what) throws Exception {
    Path path = folder.resolve("packed.wav");
    Tool.run("ffmpeg", "-i", SPEECH, "-c:a", codec, path.toString());

    var refused = assertThrows(AudioFileException.class, () -> WavFile.open(path));

    assertTrue(refused.getMessage().endsWith("found " + what), refused.getMessage());
    assertConverts(refused.hint());
  }

  private void assertConverts(String hint) throws Exception {
    Path converted = folder.resolve("converted.wav");
    String command = hint.replace("convert it: ", "").replace("converted.wav", converted + "");
    Tool.run(command.split(" "));
    try (WavFile file = WavFile.open(converted)) {
      assertEquals(WavEncoding.PCM_24, file.encoding());
    }
  }

  private static void assertReadAlike(String path, WavEncoding encoding, double[] expected)
      throws Exception {
    try (WavFile file = WavFile.open(Path.of(path))) {
      assertEquals(encoding, file.encoding());
      assertArrayEquals(expected, interleaved(file));
    }
  }

  private static double[] interleaved(WavFile file) throws AudioFileException {
    double[] samples = new double[file.channels() * (int) file.frames()];
    for (int c = 0; c < file.channels(); c++) {
      Signal channel = file.channel(c + 1);
      for (int i = 0; i < channel.length(); i++) {
        samples[i * file.channels() + c] = channel.at(i);
      }
    }
    return samples;
  }

  private static double[] readByFfmpeg(String path, int channels) throws Exception {
    return doubles(
        Tool.run(
            "ffmpeg", "-i", path, "-ac", channels + "", "-f", "f64le", "-c:a", "pcm_f64le", "-"));
  }

  private static double[] readBySox(String path, int channels) throws Exception {
    return doubles(
        Tool.run(
            "sox", path, "-t", "raw", "-c", channels + "", "-e", "float", "-b", "64", "-L", "-"));
  }

  private static String soxInfo(String option, Path path) throws Exception {
    return new String(Tool.run("sox", "--info", option, path.toString()), StandardCharsets.UTF_8)
        .strip();
  }

  private static double[] doubles(byte[] bytes) {
    DoubleBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer();
    double[] values = new double[buffer.remaining()];
    buffer.get(values);
    return values;
  }

  private static List<Signal> noise(int channels) {
    Random random = new Random(SEED);
    return Stream.generate(() -> Signal.of(RATE, random.doubles(5001, -1, 1).toArray()))
        .limit(channels)
        .toList();
  }
}
