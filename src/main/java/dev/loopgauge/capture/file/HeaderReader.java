package dev.loopgauge.capture.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * Finds the samples of a WAV file: walks its chunks up to the data and compares what they say with
 * the file's true length.
 */
final class HeaderReader {
  /** The most chunks before the data; a file with more of them is no recording. */
  private static final int MOST_CHUNKS = 1000;

  private static final int FIRST_CHUNK = 12;

  private final Path file;
  private final Bytes bytes;
  private final boolean longSizes;
  private long riffSize;
  private Map<String, Long> sizes = Map.of();
  private Optional<WavFormat> format = Optional.empty();

  private HeaderReader(Path file, Bytes bytes, ByteBuffer start) {
    this.file = file;
    this.bytes = bytes;
    this.longSizes = !Bytes.text(start, 0).equals("RIFF");
    this.riffSize = start.getInt(4) & 0xFFFFFFFFL;
  }

  /**
   * Reads the header.
   *
   * @throws AudioFileException when it isn't that of a WAV file that is read, or not a true one
   */
  static WavHeader read(Path file, Bytes bytes) throws IOException, AudioFileException {
    ByteBuffer start = bytes.read(0, LookAlike.LONGEST);
    if (start.remaining() == 0) {
      throw new AudioFileException(
          file, "expected a WAV file, found an empty one", "export or record it again");
    }
    if (start.remaining() < FIRST_CHUNK || !isWav(start)) {
      throw LookAlike.refuse(file, start);
    }
    return new HeaderReader(file, bytes, start).walk();
  }

  private static boolean isWav(ByteBuffer start) {
    String form = Bytes.text(start, 0);
    return (form.equals("RIFF") || form.equals("RF64") || form.equals("BW64"))
        && Bytes.text(start, 8).equals("WAVE");
  }

  private WavHeader walk() throws IOException, AudioFileException {
    long at = FIRST_CHUNK;
    for (int i = 0; i < MOST_CHUNKS; i++) {
      Optional<Chunk> found = bytes.chunk(at);
      if (found.isEmpty()) {
        throw damaged("a chunk at byte " + at, foundAt(at));
      }
      Chunk chunk = trueSize(found.get());
      if (chunk.id().equals("data")) {
        return data(chunk);
      }
      checkInside(chunk);
      take(chunk);
      at = chunk.next();
    }
    throw damaged("a data chunk", "more than " + MOST_CHUNKS + " other chunks");
  }

  private String foundAt(long at) {
    return bytes.size() - at < Chunk.HEADER ? "the end of the file" : "bytes that are none";
  }

  private Chunk trueSize(Chunk chunk) throws AudioFileException {
    if (!longSizes || chunk.size() != Chunk.UNSTATED) {
      return chunk;
    }
    Long size = sizes.get(chunk.id());
    if (size == null || size < 0) {
      throw damaged(
          "a 64-bit size of the " + chunk.id() + " chunk", size == null ? "none" : "2^63 or more");
    }
    return new Chunk(chunk.id(), chunk.start(), size);
  }

  private void checkInside(Chunk chunk) throws AudioFileException {
    long left = bytes.size() - chunk.start();
    if (chunk.size() > left) {
      throw new AudioFileException(
          file,
          "its "
              + chunk.id().strip()
              + " chunk should hold "
              + chunk.size()
              + " bytes, found "
              + left,
          "it was cut off while recording or copying: copy it again, or save what there is with "
              + RepairCommand.readToEnd(file));
    }
  }

  private void take(Chunk chunk) throws IOException, AudioFileException {
    if (chunk.id().equals("fmt ")) {
      if (format.isPresent()) {
        throw damaged("one format chunk", "two");
      }
      format = Optional.of(FormatChunk.parse(file, contents(chunk, FormatChunk.LONGEST)));
    } else if (longSizes && chunk.id().equals("ds64")) {
      sizes = LongSizes.parse(contents(chunk, LongSizes.LONGEST));
      riffSize = sizes.getOrDefault("RIFF", riffSize);
    }
  }

  private ByteBuffer contents(Chunk chunk, int most) throws IOException {
    return bytes.read(chunk.start(), (int) Math.min(chunk.size(), most));
  }

  private WavHeader data(Chunk chunk) throws IOException, AudioFileException {
    if (format.isEmpty()) {
      throw damaged("a format chunk before the data", "none");
    }
    WavFormat known = format.get();
    long size;
    if (isUnstated(chunk)) {
      long left = bytes.size() - chunk.start();
      size = left - left % known.frameBytes();
    } else {
      checkInside(chunk);
      checkNothingHidden(chunk);
      size = chunk.size();
    }
    if (size == 0) {
      throw new AudioFileException(
          file, "expected samples, found none", "export or record it again");
    }
    if (size % known.frameBytes() != 0) {
      throw damaged("whole frames of " + known.frameBytes() + " bytes", size + " bytes of samples");
    }
    return new WavHeader(known, chunk.start(), size / known.frameBytes());
  }

  /**
   * Whether the length was never filled in, because the file was written to a pipe: then the data
   * runs to the end. A data size of 0 says so only together with an equally unknown file size.
   */
  private boolean isUnstated(Chunk data) {
    boolean fileUnstated = riffSize == 0 || riffSize == Chunk.UNSTATED;
    return data.size() == 0 ? fileUnstated : data.size() == Chunk.UNSTATED && !longSizes;
  }

  /** What follows the data must be a chunk, else the header understates how long the data is. */
  private void checkNothingHidden(Chunk data) throws IOException, AudioFileException {
    long rest = bytes.size() - data.next();
    if (rest < Chunk.HEADER) {
      return;
    }
    Optional<Chunk> following = bytes.chunk(data.next());
    if (following.isEmpty() || following.get().size() > rest - Chunk.HEADER) {
      throw new AudioFileException(
          file,
          "expected its data to be " + data.size() + " bytes, found " + rest + " more after it",
          "its header tells the wrong length: export it again, or read it to its end with "
              + RepairCommand.readToEnd(file));
    }
  }

  private AudioFileException damaged(String expected, String found) {
    return new AudioFileException(
        file,
        "expected " + expected + ", found " + found,
        "its header is damaged: export or record it again");
  }
}
