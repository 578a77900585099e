package dev.loopgauge.capture.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever a header says, a file is read within its bytes or refused. */
@Tag("campaign")
class WavHeaderFuzzTest {
  private static final int VARIANTS = 4000;
  private static final int[] TELLING = {0, 1, 2, 0x7F, 0x80, 0xFE, 0xFF};

  private static final byte[] PLAIN =
      WavBytes.riff(
          WavBytes.chunk("LIST", new byte[5]),
          WavBytes.fmt(3, 2, 48_000, 32),
          WavBytes.chunk("fact", WavBytes.le(4, 8)),
          WavBytes.chunk("data", new byte[64]),
          WavBytes.chunk("LIST", new byte[4]));
  private static final byte[] LONG =
      WavBytes.join(
          WavBytes.ascii("RF64"),
          WavBytes.le(4, -1),
          WavBytes.ascii("WAVE"),
          WavBytes.chunk("ds64", WavBytes.join(WavBytes.le(8, 160, 48, 16), WavBytes.le(4, 0))),
          WavBytes.extensible(1, 1, 48_000, 24, 24),
          WavBytes.ascii("data"),
          WavBytes.le(4, -1),
          new byte[48]);

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void changedBytesAreReadOrRefusedAndNothingElse(long seed) throws Exception {
    Random random = new Random(seed);
    int read = 0;
    for (int i = 0; i < VARIANTS; i++) {
      byte[] bytes = changed(random.nextBoolean() ? PLAIN : LONG, random);
      read += isRead(bytes, "seed " + seed + ", variant " + i) ? 1 : 0;
    }
    assertTrue(read > 0 && read < VARIANTS, "seed " + seed + " read " + read);
  }

  private static byte[] changed(byte[] bytes, Random random) {
    byte[] changed = bytes.clone();
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      int value =
          random.nextBoolean() ? random.nextInt(256) : TELLING[random.nextInt(TELLING.length)];
      changed[random.nextInt(bytes.length)] = (byte) value;
    }
    return random.nextInt(8) == 0
        ? Arrays.copyOf(changed, random.nextInt(changed.length))
        : changed;
  }

  private boolean isRead(byte[] bytes, String variant) throws Exception {
    Path path = Files.write(folder.resolve("fuzzed.wav"), bytes);
    try (WavFile file = WavFile.open(path)) {
      long sampleBytes = file.frames() * file.channels() * file.encoding().bytes();
      assertTrue(sampleBytes <= bytes.length, variant + " holds " + sampleBytes + " bytes");
      assertEquals(file.frames(), file.channel(file.channels()).length(), variant);
      return true;
    } catch (AudioFileException refused) {
      assertTrue(!refused.getMessage().isBlank() && !refused.hint().isBlank(), variant);
      return false;
    } catch (RuntimeException escaped) {
      return fail(variant + ": " + escaped, escaped);
    } finally {
      Files.delete(path);
    }
  }
}
