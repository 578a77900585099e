package dev.loopgauge.capture.jack;

import com.sun.jna.Function;
import com.sun.jna.Memory;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;

/**
 * Something that the server's library tells on a thread of its own, noted without entering Java.
 * The library may cancel that thread at any moment, when a client closes just as its server ends;
 * in the midst of Java that would end this whole process, or leave it waiting for ever. So what is
 * called is a function of the C library: {@code time} writes the time into the word it is given.
 */
final class ServerNotice {
  /** To be called with {@link #word}. */
  static final Pointer WRITER = Function.getFunction(Platform.C_LIBRARY_NAME, "time");

  private final Memory word = new Memory(Long.BYTES);

  ServerNotice() {
    word.clear();
  }

  /** Where the note is written. It must be kept for as long as the library may write. */
  Pointer word() {
    return word;
  }

  boolean came() {
    return word.getLong(0) != 0;
  }

  /** Whether it came since the last time this was asked. */
  boolean cameAnew() {
    boolean came = came();
    if (came) {
      word.clear();
    }
    return came;
  }
}
