package dev.loopgauge.capture.file;

import dev.loopgauge.signal.HintedException;
import java.nio.file.Path;

/** An audio file can't be read or written as asked. */
public final class AudioFileException extends HintedException {
  private static final long serialVersionUID = 1L;

  /**
   * A failure.
   *
   * @param file the file it is about; its name starts the message
   * @param text what happened, one sentence: expected, found, where
   * @param hint what to try, one sentence
   */
  AudioFileException(Path file, String text, String hint) {
    super("unusable-file", oneLine(file + ": " + text), oneLine(hint));
  }

  /** File names may hold line breaks and terminal commands; messages may not. */
  private static String oneLine(String text) {
    return text.replaceAll("\\p{Cntrl}", "?");
  }
}
