package dev.loopgauge.job.kept;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavWriter;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.Sha256;
import dev.loopgauge.signal.Signal;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
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
    return new PackedRecording(packed -> write(returns, packed));
  }

  /** A WAV file that stays where it is. */
  public static PackedRecording ofFile(Path wav) {
    return new PackedRecording(packed -> Files.copy(wav, packed));
  }

  private static void write(List<Signal> returns, OutputStream packed)
      throws IOException, AudioFileException {
    Path folder = Files.createTempDirectory("loopgauge");
    Path file = folder.resolve("capture.wav");
    try {
      WavWriter.write(file, returns, WavEncoding.FLOAT_32);
      Files.copy(file, packed);
    } finally {
      Files.deleteIfExists(file);
      Files.delete(folder);
    }
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
    Path part = folder.resolve(name + ".part");
    try {
      String digest = pack(part);
      Files.move(part, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
      force(folder);
      return new KeptCapture(name, digest);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private String pack(Path part) throws IOException, AudioFileException {
    MessageDigest digest = Sha256.begin();
    try (FileChannel channel =
            FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        OutputStream packed =
            new GZIPOutputStream(new DigestOutputStream(new Forced(channel), digest), 1 << 16)) {
      wav.copyTo(packed);
    }
    return Sha256.end(digest);
  }

  /** Waits until the file's name is on the disk too, where folders can be asked for that. */
  private static void force(Path folder) throws IOException {
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }

  /** Forces what was written to the disk before it closes. */
  private static final class Forced extends FilterOutputStream {
    private final FileChannel channel;

    Forced(FileChannel channel) {
      super(Channels.newOutputStream(channel));
      this.channel = channel;
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      out.write(bytes, from, count);
    }

    @Override
    public void close() throws IOException {
      channel.force(true);
      super.close();
    }
  }
}
