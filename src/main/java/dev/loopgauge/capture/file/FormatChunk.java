package dev.loopgauge.capture.file;

import dev.loopgauge.signal.SampleRate;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Map;

/**
 * The contents of the {@code fmt} chunk: reading and writing them.
 *
 * <p>Source: Microsoft, "Multiple channel audio data and WAVE files" (WAVE_FORMAT_EXTENSIBLE: tag
 * 0xFFFE, an extension of at least 22 bytes, valid bits left-justified in their container, the
 * sub-format as a GUID). Since the valid bits are the highest ones, a container is read whole.
 */
final class FormatChunk {
  /** The most bytes of the chunk that say anything: those of the extensible form. */
  static final int LONGEST = 40;

  private static final int SHORTEST = 16;
  private static final int WITH_EMPTY_EXTENSION = 18;
  private static final int EXTENSION = 22;
  private static final int TAG_PCM = 1;
  private static final int TAG_FLOAT = 3;
  private static final int TAG_EXTENSIBLE = 0xFFFE;

  /** The sub-format's bytes after its first two, which hold the tag. */
  private static final String SUB_FORMAT_TAIL = "000000001000800000aa00389b71";

  private static final Map<Integer, String> COMPRESSED =
      Map.of(
          0x02, "ADPCM",
          0x06, "A-law",
          0x07, "mu-law",
          0x11, "IMA ADPCM",
          0x31, "GSM 6.10",
          0x50, "MPEG audio",
          0x55, "MP3");

  private FormatChunk() {}

  /**
   * The chunk of a format: the plain form where it is enough, with an extension of no bytes for
   * floating point, and the extensible form elsewhere.
   */
  static byte[] of(WavFormat format) {
    boolean extensible = needsExtension(format);
    int tag = format.encoding().floating() ? TAG_FLOAT : TAG_PCM;
    int bits = 8 * format.encoding().bytes();
    int plain = format.encoding().floating() ? WITH_EMPTY_EXTENSION : SHORTEST;
    ByteBuffer chunk =
        ByteBuffer.allocate(extensible ? LONGEST : plain).order(ByteOrder.LITTLE_ENDIAN);
    chunk.putShort((short) (extensible ? TAG_EXTENSIBLE : tag));
    chunk.putShort((short) format.channels());
    chunk.putInt(format.rate().hertz());
    chunk.putInt(format.rate().hertz() * format.frameBytes());
    chunk.putShort((short) format.frameBytes());
    chunk.putShort((short) bits);
    if (extensible) {
      int noSpeakerMeant = 0;
      chunk.putShort((short) EXTENSION).putShort((short) bits).putInt(noSpeakerMeant);
      chunk.putShort((short) tag).put(HexFormat.of().parseHex(SUB_FORMAT_TAIL));
    }
    return chunk.array();
  }

  /** The source asks for it with more than two channels or whole numbers of more than 16 bits. */
  private static boolean needsExtension(WavFormat format) {
    return format.channels() > 2
        || (!format.encoding().floating() && format.encoding() != WavEncoding.PCM_16);
  }

  /**
   * The format that a chunk states.
   *
   * @param chunk its first {@value #LONGEST} bytes, or all where it has fewer
   * @throws AudioFileException when the chunk is too short, contradicts itself or states a format
   *     that isn't read
   */
  static WavFormat parse(Path file, ByteBuffer chunk) throws AudioFileException {
    ByteBuffer fmt = chunk.order(ByteOrder.LITTLE_ENDIAN);
    if (fmt.remaining() < SHORTEST) {
      throw damaged(file, "a format chunk of 16 bytes or more", fmt.remaining() + " bytes");
    }
    int stated = fmt.getShort(0) & 0xFFFF;
    int tag = stated == TAG_EXTENSIBLE ? subFormat(file, fmt) : stated;
    int channels = fmt.getShort(2) & 0xFFFF;
    if (channels < 1 || channels > WavFormat.MOST_CHANNELS) {
      throw new AudioFileException(
          file,
          "expected 1 to " + WavFormat.MOST_CHANNELS + " channels, found " + channels,
          "export the channels you need to a file of their own");
    }
    SampleRate rate = rate(file, fmt.getInt(4) & 0xFFFFFFFFL);
    WavEncoding encoding = encoding(file, tag, fmt.getShort(14) & 0xFFFF);
    WavFormat format = new WavFormat(rate, channels, encoding);
    int blockAlign = fmt.getShort(12) & 0xFFFF;
    if (blockAlign != format.frameBytes()) {
      throw damaged(
          file,
          "frames of " + format.frameBytes() + " bytes for " + channels + " channels",
          "frames of " + blockAlign + " bytes");
    }
    return format;
  }

  private static int subFormat(Path file, ByteBuffer fmt) throws AudioFileException {
    int extension = fmt.remaining() < LONGEST ? 0 : fmt.getShort(16) & 0xFFFF;
    if (extension < EXTENSION) {
      throw damaged(file, "a format extension of 22 bytes or more", "a shorter one");
    }
    int bits = fmt.getShort(14) & 0xFFFF;
    int validBits = fmt.getShort(18) & 0xFFFF;
    if (validBits > bits) {
      throw damaged(file, "at most " + bits + " valid bits", validBits + "");
    }
    byte[] tail = new byte[14];
    fmt.get(26, tail);
    String found = HexFormat.of().formatHex(tail);
    if (!found.equals(SUB_FORMAT_TAIL)) {
      throw unread(file, "a sub-format that isn't known");
    }
    return fmt.getShort(24) & 0xFFFF;
  }

  private static SampleRate rate(Path file, long hertz) throws AudioFileException {
    if (hertz < SampleRate.LOWEST || hertz > SampleRate.HIGHEST) {
      throw damaged(
          file,
          "a sample rate of " + SampleRate.LOWEST + " to " + SampleRate.HIGHEST + " Hz",
          hertz + " Hz");
    }
    return new SampleRate((int) hertz);
  }

  private static WavEncoding encoding(Path file, int tag, int bits) throws AudioFileException {
    if (tag != TAG_PCM && tag != TAG_FLOAT) {
      throw unread(file, COMPRESSED.getOrDefault(tag, "the format with tag " + tag));
    }
    for (WavEncoding encoding : WavEncoding.values()) {
      if (encoding.floating() == (tag == TAG_FLOAT) && 8 * encoding.bytes() == bits) {
        return encoding;
      }
    }
    throw unread(file, bits + "-bit " + (tag == TAG_FLOAT ? "floating point" : "whole numbers"));
  }

  private static AudioFileException unread(Path file, String found) {
    return new AudioFileException(
        file,
        "expected 16, 24 or 32-bit samples or floating point, found " + found,
        RepairCommand.convert(file));
  }

  private static AudioFileException damaged(Path file, String expected, String found) {
    return new AudioFileException(
        file,
        "expected " + expected + ", found " + found,
        "its header is damaged: export or record it again");
  }
}
