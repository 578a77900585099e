package dev.loopgauge.cli.terminal;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** A stream whose reader may go away, as {@code head} does: what comes after is dropped. */
final class OpenPipe extends FilterOutputStream {
  /** What Linux and macOS call it; elsewhere a closed pipe stays an error. */
  private static final String CLOSED = "Broken pipe";

  private final Runnable readerGone;

  /**
   * A stream to a process that may end before this one.
   *
   * @param readerGone is run each time that something is dropped
   */
  OpenPipe(OutputStream out, Runnable readerGone) {
    super(out);
    this.readerGone = readerGone;
  }

  @Override
  public void write(int octet) throws IOException {
    write(new byte[] {(byte) octet}, 0, 1);
  }

  @Override
  public void write(byte[] octets, int from, int length) throws IOException {
    try {
      out.write(octets, from, length);
    } catch (IOException e) {
      if (!CLOSED.equals(e.getMessage())) {
        throw e;
      }
      readerGone.run();
    }
  }
}
