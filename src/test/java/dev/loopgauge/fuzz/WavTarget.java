package dev.loopgauge.fuzz;

import static dev.loopgauge.capture.file.WavBytes.ascii;
import static dev.loopgauge.capture.file.WavBytes.chunk;
import static dev.loopgauge.capture.file.WavBytes.join;
import static dev.loopgauge.capture.file.WavBytes.le;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.WavBytes;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.signal.Signal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** WAV and RF64: no more is read than the file holds, and nothing but numbers. */
record WavTarget(Path file) implements Target {
  @Override
  public List<byte[]> seeds() {
    byte[] floats =
        WavBytes.riff(
            chunk("LIST", new byte[5]),
            WavBytes.fmt(3, 2, 48_000, 32),
            chunk("fact", le(4, 8)),
            chunk("data", new byte[64]));
    byte[] extended =
        join(
            ascii("RF64"),
            le(4, -1),
            ascii("WAVE"),
            chunk("ds64", join(le(8, 160, 48, 16), le(4, 0))),
            WavBytes.extensible(1, 1, 48_000, 24, 24),
            ascii("data"),
            le(4, -1),
            new byte[48]);
    return List.of(floats, extended);
  }

  @Override
  public void check(byte[] input) throws Exception {
    Files.write(file, input);
    Refusal.orRead(() -> read(input));
  }

  private void read(byte[] input) throws Exception {
    try (WavFile wav = WavFile.open(file)) {
      long bytes = wav.frames() * wav.channels() * wav.encoding().bytes();
      assertTrue(bytes <= input.length, () -> bytes + " bytes of " + input.length);
      Signal last = wav.channel(wav.channels());
      assertEquals(wav.frames(), last.length());
      for (int i = 0; i < last.length(); i++) {
        assertTrue(Double.isFinite(last.at(i)), "no number was read");
      }
    }
  }
}
