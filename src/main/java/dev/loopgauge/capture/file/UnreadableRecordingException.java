package dev.loopgauge.capture.file;

/** A recording that was open could not be read to its end; the cause says why and what to try. */
public final class UnreadableRecordingException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  UnreadableRecordingException(AudioFileException cause) {
    super(cause.getMessage(), cause);
  }

  /** What was found, and what to try. */
  @Override
  public synchronized AudioFileException getCause() {
    return (AudioFileException) super.getCause();
  }
}
