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

  /** The folder beside a journal; for a database, in the current folder. */
  public static Path folderOf(String place) {
    return place.startsWith("jdbc:") ? Path.of("loopgauge-captures") : Path.of(place + "-captures");
  }

  /** The file of an entry's recording. */
  public static String name(UUID id) {
    return id + ".wav.gz";
  }

  /** Writes it whole or not at all, and waits until it is on the disk. */
  public KeptCapture keep(Path folder, UUID id) throws IOException, AudioFileException {
    Files.createDirectories(folder);
    String name = name(id);
    MessageDigest digest = Sha256.begin();
    WholeFile.ownAt(folder.resolve(name)).create(out -> pack(new DigestOutputStream(out, digest)));
    return new KeptCapture(name, Sha256.end(digest));
  }

  private void pack(OutputStream out) throws IOException, AudioFileException {
    try (OutputStream packed = new GZIPOutputStream(out, 1 << 16)) {
      wav.copyTo(packed);
    }
  }
}
