package dev.loopgauge.capture.file;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** What a file that isn't WAV looks like, told from its first bytes. */
final class LookAlike {
  /** How many first bytes are looked at. */
  static final int LONGEST = 64;

  private record Mark(int at, String bytes, String what, boolean audio) {}

  private static final List<Mark> MARKS =
      List.of(
          new Mark(0, "ID3", "MP3 audio", true),
          new Mark(0, "fLaC", "FLAC audio", true),
          new Mark(0, "OggS", "Ogg audio", true),
          new Mark(8, "AIFF", "AIFF audio", true),
          new Mark(8, "AIFC", "AIFF audio", true),
          new Mark(0, "caff", "CAF audio", true),
          new Mark(0, ".snd", "AU audio", true),
          new Mark(4, "ftyp", "MP4 audio or video", true),
          new Mark(0, "riff", "Wave64 audio", true),
          new Mark(0, "RIFX", "big-endian WAV audio", true),
          new Mark(8, "AVI ", "AVI video", true),
          new Mark(0, "\u001aE\u00df\u00a3", "Matroska or WebM audio or video", true),
          new Mark(0, "PK\u0003\u0004", "a ZIP archive", false),
          new Mark(0, "%PDF", "a PDF document", false));

  private LookAlike() {}

  /**
   * The refusal of a file that isn't WAV.
   *
   * @param start its first {@value #LONGEST} bytes, or all where it has fewer
   */
  static AudioFileException refuse(Path file, ByteBuffer start) {
    byte[] bytes = new byte[start.remaining()];
    start.get(start.position(), bytes);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    for (Mark mark : MARKS) {
      if (text.startsWith(mark.bytes, mark.at)) {
        return refusal(file, mark.what, mark.audio);
      }
    }
    if (bytes.length > 1 && bytes[0] == (byte) 0xFF && (bytes[1] & 0xE0) == 0xE0) {
      return refusal(file, "MP3 or AAC audio", true);
    }
    boolean written = text.chars().noneMatch(c -> c < '\t' || (c > '\r' && c < ' ') || c == 0x7F);
    return refusal(file, written ? "text" : "neither that nor anything known", false);
  }

  private static AudioFileException refusal(Path file, String found, boolean audio) {
    return new AudioFileException(
        file,
        "expected a WAV file, found " + found,
        audio ? RepairCommand.convert(file) : "is it the right file? Export the recording as WAV");
  }
}
