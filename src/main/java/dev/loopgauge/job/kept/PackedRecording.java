package dev.loopgauge.job.kept;

import dev.loopgauge.capture.WholeFile;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavWriter;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.Sha256;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.List;
import java.util.UUID;
import java.util.zip.GZIPOutputStream;

/**
 * A recording to be kept beside the journal, as a WAV file packed by gzip (RFC 1952), which loses
 * nothing.
 */
public final class PackedRecording {
  private final Wav wav;

  private PackedRecording(Wav wav) {
    this.wav = wav;
  }

  /** Where the WAV file comes from. */
  private interface Wav {
    void copyTo(OutputStream packed) throws IOException, AudioFileException;
  }

  /** What came back from the sound card, in 32-bit samples. */
  public static PackedRecording of(List<Signal> returns) {
    return new PackedRecording(
        packed -> WavWriter.write(packed, Path.of("the recording"), returns, WavEncoding.FLOAT_32));
  }

  /** A WAV file that stays where it is. */
  public static PackedRecording ofFile(Path wav) {
    return new PackedRecording(packed -> Files.copy(wav, packed));
  }

  /** The file of a recording by the digest of its bytes. */
  static String name(String digest) {
    return digest + ".wav.gz";
  }

  /** The file of an entry's recording, as versions before 3 of the journal named it. */
  static String name(UUID id) {
    return id + ".wav.gz";
  }

  /**
   * Writes it whole or not at all, and waits until it is on the disk. Equal recordings are kept
   * once, named by the digest of their bytes.
   */
  public KeptCapture keep(Path folder) throws IOException, AudioFileException {
    Files.createDirectories(folder);
    MessageDigest digest = Sha256.begin();
    pack(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
    KeptCapture capture = of(Sha256.end(digest));
    Path file = folder.resolve(capture.file());
    if (!Files.exists(file)) {
      WholeFile.ownAt(file).replace(this::pack);
    }
    return capture;
  }

  private static KeptCapture of(String digest) {
    return new KeptCapture(name(digest), digest);
  }

  private void pack(OutputStream out) throws IOException, AudioFileException {
    try (OutputStream packed = new GZIPOutputStream(out, 1 << 16)) {
      wav.copyTo(packed);
    }
  }
}
