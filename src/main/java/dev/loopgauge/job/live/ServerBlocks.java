package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import java.util.Optional;

/** An audio server, which is set back to the block size it had, even after Ctrl-C. */
final class ServerBlocks implements HostBlocks {
  private final BlockSizeServer server;
  private final int before;
  private final Thread atTheEnd;

  /**
   * Remembers the server's block size.
   *
   * @throws CaptureException when the server doesn't answer
   */
  ServerBlocks(BlockSizeServer server) throws CaptureException {
    this.server = server;
    this.before = server.blockSize();
    this.atTheEnd = new Thread(this::setBackQuietly, "block size back");
    Runtime.getRuntime().addShutdownHook(atTheEnd);
  }

  @Override
  public AudioBackend set(int samples) throws CaptureException {
    server.setBlockSize(samples);
    return server;
  }

  @Override
  public Optional<String> warning() {
    return Optional.of(
        "The audio server is set to other block sizes, and back to %d samples at the end; all that runs on it is interrupted each time."
            .formatted(before));
  }

  @Override
  public void close() throws CaptureException {
    try {
      Runtime.getRuntime().removeShutdownHook(atTheEnd);
    } catch (IllegalStateException ending) {
      // The program is being stopped, and the hook sets the server back.
      return;
    }
    setBack();
  }

  private void setBack() throws CaptureException {
    if (server.blockSize() != before) {
      server.setBlockSize(before);
    }
  }

  private void setBackQuietly() {
    try {
      setBack();
    } catch (CaptureException e) {
      // The program is ending and the server is gone: nobody is left to tell.
    }
  }
}
