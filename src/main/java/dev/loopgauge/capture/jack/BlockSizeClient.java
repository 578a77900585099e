package dev.loopgauge.capture.jack;

import com.sun.jna.ptr.IntByReference;
import dev.loopgauge.capture.CaptureException;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;
import org.jaudiolibs.jnajack.lowlevel.JackLibraryDirect;

/** A client of the server that only sets its block size, which JNAJack's own clients can't. */
final class BlockSizeClient {
  private static final int NO_START_SERVER = 0x01;
  private static final int MOST_LOOKS = 200;

  private final JackLibrary library = new JackLibraryDirect();

  /**
   * Sets the block size and waits until the server runs at it.
   *
   * @throws CaptureException when the server is gone, or stays at another size
   */
  Void set(int samples) throws CaptureException {
    JackLibrary._jack_client client =
        library.jack_client_open("loopgauge-blocks", NO_START_SERVER, new IntByReference());
    if (client == null) {
      throw new CaptureException(
          CaptureException.Kind.BACKEND_UNUSABLE,
          "The audio server took no client to set its block size.",
          "Check that the audio server still runs, and try again.");
    }
    try {
      library.jack_set_buffer_size(client, samples);
      await(client, samples);
      return null;
    } finally {
      library.jack_client_close(client);
    }
  }

  private void await(JackLibrary._jack_client client, int samples) throws CaptureException {
    int now = library.jack_get_buffer_size(client);
    for (int look = 0; look < MOST_LOOKS && now != samples; look++) {
      TakeLimit.pause();
      now = library.jack_get_buffer_size(client);
    }
    if (now != samples) {
      throw new CaptureException(
          CaptureException.Kind.UNSUPPORTED_FORMAT,
          "The audio server stays at a block of %d samples, not %d.".formatted(now, samples),
          "Choose block sizes that the sound card can run at.");
    }
  }
}
