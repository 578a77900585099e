package dev.loopgauge.capture.file;

import dev.loopgauge.signal.UncheckedHintedException;

/** A recording that was open could not be read to its end. */
public final class UnreadableRecordingException extends UncheckedHintedException {
  private static final long serialVersionUID = 1L;

  UnreadableRecordingException(AudioFileException cause) {
    super(cause.code(), cause.getMessage(), cause.hint());
    initCause(cause);
  }
}
