package dev.loopgauge.capture.file;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.WholeFile;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes WAV files: plain ones where that is enough, extensible ones for more than two channels or
 * whole numbers of more than 16 bits. A file appears complete, under its name, or not at all.
 */
public final class WavWriter {
  private static final int BLOCK_FRAMES = 4096;
  private static final int FACT_BYTES = 4;

  private WavWriter() {}

  /**
   * Writes signals as the channels of a new file, in their order.
   *
   * @param file the file to make; it must not exist
   * @param channels 1 to 64 signals of the same rate and length, at least one sample long
   * @param encoding how each sample is written
   * @throws AudioFileException when the file exists or can't be written, when a sample is beyond
   *     full scale (whole numbers) or not a number, or when the file would pass 4 GiB
   * @throws IllegalArgumentException when the signals don't make one file
   */
  public static void write(Path file, List<Signal> channels, WavEncoding encoding)
      throws AudioFileException {
    try {
      WholeFile.at(file).create(out -> write(out, file, channels, encoding));
    } catch (FileAlreadyExistsException there) {
      throw exists(file);
    } catch (IOException failed) {
      throw unwritable(file, failed);
    }
  }

  /**
   * Writes signals as the channels of a WAV file that somebody else makes.
   *
   * @param file what errors call it
   * @param channels as for {@link #write(Path, List, WavEncoding)}
   * @throws IOException when it can't be written
   * @throws AudioFileException as for {@link #write(Path, List, WavEncoding)}
   */
  public static void write(OutputStream out, Path file, List<Signal> channels, WavEncoding encoding)
      throws IOException, AudioFileException {
    WavFormat format = format(channels, encoding);
    checkSamples(file, channels, encoding);
    out.write(header(file, format, channels.get(0).length()));
    writeSamples(out, channels, format);
  }

  private static WavFormat format(List<Signal> channels, WavEncoding encoding) {
    if (channels.isEmpty()) {
      throw new IllegalArgumentException("a file must have at least one channel");
    }
    Signal first = channels.get(0);
    for (Signal channel : channels) {
      if (!channel.rate().equals(first.rate()) || channel.length() != first.length()) {
        throw new IllegalArgumentException("channels of one file must share rate and length");
      }
    }
    if (first.length() == 0) {
      throw new IllegalArgumentException("a file must hold at least one sample");
    }
    return new WavFormat(first.rate(), channels.size(), encoding);
  }

  private static void checkSamples(Path file, List<Signal> channels, WavEncoding encoding)
      throws AudioFileException {
    for (int c = 0; c < channels.size(); c++) {
      Signal channel = channels.get(c);
      for (int i = 0; i < channel.length(); i++) {
        if (!encoding.holds(channel.at(i))) {
          throw new AudioFileException(
              file,
              "sample " + i + " of channel " + (c + 1) + " is " + channel.at(i) + ", not written",
              "full scale is 1.0: lower the level, or write floating point");
        }
      }
    }
  }

  private static byte[] header(Path file, WavFormat format, int frames) throws AudioFileException {
    byte[] fmt = FormatChunk.of(format);
    boolean fact = format.encoding().floating();
    long dataBytes = (long) frames * format.frameBytes();
    int length = 12 + 8 + fmt.length + (fact ? 8 + FACT_BYTES : 0) + 8;
    long riffSize = length - 8 + dataBytes + dataBytes % 2;
    if (riffSize >= Chunk.UNSTATED) {
      throw new AudioFileException(
          file,
          "a WAV file holds less than 4 GiB, found " + riffSize + " bytes to write",
          "write fewer channels or a shorter stretch");
    }
    ByteBuffer header = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    header.put(ascii("RIFF")).putInt((int) riffSize).put(ascii("WAVE"));
    header.put(ascii("fmt ")).putInt(fmt.length).put(fmt);
    if (fact) {
      header.put(ascii("fact")).putInt(FACT_BYTES).putInt(frames);
    }
    header.put(ascii("data")).putInt((int) dataBytes);
    return header.array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static void writeSamples(OutputStream out, List<Signal> channels, WavFormat format)
      throws IOException {
    int frames = channels.get(0).length();
    for (int from = 0; from < frames; from += BLOCK_FRAMES) {
      out.write(interleaved(channels, format, from, Math.min(BLOCK_FRAMES, frames - from)));
    }
    if ((long) frames * format.frameBytes() % 2 == 1) {
      out.write(0);
    }
  }

  private static byte[] interleaved(List<Signal> channels, WavFormat format, int from, int length) {
    int sampleBytes = format.encoding().bytes();
    ByteBuffer block = ByteBuffer.allocate(length * format.frameBytes());
    for (int c = 0; c < channels.size(); c++) {
      double[] samples = channels.get(c).slice(from, from + length).toArray();
      byte[] packed = format.encoding().encode(samples);
      for (int i = 0; i < length; i++) {
        int at = i * format.frameBytes() + c * sampleBytes;
        block.put(at, packed, i * sampleBytes, sampleBytes);
      }
    }
    return block.array();
  }

  private static AudioFileException exists(Path file) {
    return new AudioFileException(
        file, "the file exists and is not overwritten", "choose another name, or delete it first");
  }

  private static AudioFileException unwritable(Path file, IOException failed) {
    String reason =
        failed instanceof NoSuchFileException ? "no such folder" : FileTrouble.reason(failed);
    return new AudioFileException(
        file,
        "it can't be written: " + reason,
        "check that the folder exists, may be written to and has room");
  }
}
