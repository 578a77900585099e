package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import java.io.IOException;
import java.util.Optional;

/** An audio server, which is set back to the block size it had, even after Ctrl-C. */
final class ServerBlocks implements HostBlocks {
  private final BlockSizeServer server;
  private final BlocksMark mark;
  private final int before;
  private final Thread atTheEnd;

  /**
   * Remembers the server's block size.
   *
   * @throws CaptureException when the server doesn't answer
   */
  ServerBlocks(BlockSizeServer server, BlocksMark mark) throws CaptureException, IOException {
    this.server = server;
    this.mark = mark;
    this.before = before(server.blockSize(), mark.sizes());
    this.atTheEnd = new Thread(this::setBackQuietly, "block size back");
    Runtime.getRuntime().addShutdownHook(atTheEnd);
  }

  /** What an earlier command was killed before it set back is set back now. */
  private static int before(int now, Optional<BlocksMark.Sizes> left) {
    return left.filter(noted -> noted.set() == now).map(BlocksMark.Sizes::before).orElse(now);
  }

  @Override
  public AudioBackend set(int samples) throws CaptureException, IOException {
    mark.note(new BlocksMark.Sizes(before, samples));
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
    clearMark();
  }

  /** A note that stays is found out to be old by the next command. */
  private void clearMark() {
    try {
      mark.clear();
    } catch (IOException e) {
      // The server is set back, and that is what counts.
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
