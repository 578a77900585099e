package dev.loopgauge.fuzz;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.setup.CalibrationStore;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Calibrations, read and written again. */
final class CalibrationTarget implements Target {
  static final Calibration MADE =
      new Calibration(
          "java-sound",
          "Stage card: out \"A\" # 1",
          "48000",
          new SampleRate(48_000),
          256,
          new ChannelPair(2, 4),
          Optional.of(new ChannelPair(1, 3)),
          1234.5,
          0.03,
          Instant.parse("2026-05-01T18:30:00Z"));

  private final CalibrationStore fuzzed;
  private final CalibrationStore again;
  private final Path file;

  CalibrationTarget(Path folder) throws Exception {
    fuzzed = new DataFolder(folder.resolve("fuzzed")).calibrations();
    again = new DataFolder(folder.resolve("again")).calibrations();
    file = fuzzed.folder().resolve(again.save(MADE).getFileName());
  }

  @Override
  public List<byte[]> seeds() throws Exception {
    return List.of(Files.readAllBytes(again.save(MADE)));
  }

  @Override
  public void check(byte[] input) throws Exception {
    Files.createDirectories(fuzzed.folder());
    Files.write(file, input);
    Refusal.orRead(
        () -> {
          for (Calibration read : fuzzed.all()) {
            again.save(read);
          }
        });
  }
}
