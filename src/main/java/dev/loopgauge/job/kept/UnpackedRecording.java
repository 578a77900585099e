package dev.loopgauge.job.kept;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.Samples;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.zip.GZIPInputStream;

/** A recording that was kept beside the journal, unpacked for as long as it is read. */
final class UnpackedRecording implements AutoCloseable {
  private final Path file;
  private final WavFile wav;

  private UnpackedRecording(Path file, WavFile wav) {
    this.file = file;
    this.wav = wav;
  }

  /**
   * Unpacks one.
   *
   * @throws AudioFileException when it holds no recording
   */
  static UnpackedRecording of(Path packed) throws IOException, AudioFileException {
    Path file = Files.createTempFile("loopgauge", ".wav");
    try {
      try (InputStream in = new GZIPInputStream(Files.newInputStream(packed))) {
        Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
      }
      return new UnpackedRecording(file, WavFile.open(file));
    } catch (IOException | AudioFileException | RuntimeException failed) {
      Files.delete(file);
      throw failed;
    }
  }

  int channels() {
    return wav.channels();
  }

  /**
   * The delay of one channel against another.
   *
   * @param longest the longest delay to look for, in seconds
   */
  Estimate delay(int reference, int ret, double longest) throws AudioFileException {
    return new DelayEstimator(longest).estimate(whole(reference), whole(ret));
  }

  private Samples whole(int channel) throws AudioFileException {
    return wav.samples(channel);
  }

  @Override
  public void close() throws IOException {
    wav.close();
    Files.delete(file);
  }
}
