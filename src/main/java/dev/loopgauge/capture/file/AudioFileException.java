package dev.loopgauge.capture.file;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** An audio file can't be read or written as asked. */
public final class AudioFileException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String hint;

  /**
   * A failure.
   *
   * @param file the file it is about; its name starts the message
   * @param text what happened, one sentence: expected, found, where
   * @param hint what to try, one sentence
   */
  AudioFileException(Path file, String text, String hint) {
    super(oneLine(file + ": " + text));
    this.hint = oneLine(hint);
  }

  /** What to try. */
  public String hint() {
    return hint;
  }

  /** Why reading or writing failed, in words. */
  static String reason(IOException failed) {
    if (failed instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (failed instanceof NoSuchFileException) {
      return "no such folder";
    }
    if (failed instanceof FileSystemException named && named.getReason() != null) {
      return named.getReason();
    }
    return failed.getMessage();
  }

  /** File names may hold line breaks and terminal commands; messages may not. */
  private static String oneLine(String text) {
    return text.replaceAll("\\p{Cntrl}", "?");
  }
}
