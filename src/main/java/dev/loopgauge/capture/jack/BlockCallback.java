package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackException;
import org.jaudiolibs.jnajack.JackPort;
import org.jaudiolibs.jnajack.JackProcessCallback;

/**
 * What the server calls for each block, on a thread with no time to spare: nothing in it allocates,
 * waits or throws.
 */
abstract class BlockCallback implements JackProcessCallback {
  private static final long LEAVE_MS = 300;

  private final JackPort[] ports;
  private final int blockSize;
  private final AtomicReference<RunningTake> current;
  private final ServerWatch watch;
  private final CountDownLatch left = new CountDownLatch(1);
  private volatile boolean leaving;

  BlockCallback(
      List<JackPort> ports,
      int blockSize,
      AtomicReference<RunningTake> current,
      ServerWatch watch) {
    this.ports = ports.toArray(new JackPort[0]);
    this.blockSize = blockSize;
    this.current = current;
    this.watch = watch;
  }

  @Override
  public final boolean process(JackClient client, int block) {
    if (leaving) {
      left.countDown();
      return false;
    }
    try {
      // A block that has grown since doesn't fit the ports' buffers; the watch reports it.
      int length = Math.min(block, blockSize);
      rest(ports, length);
      RunningTake take = current.get();
      if (take != null) {
        move(take, take.frameAt(client.getLastFrameTime(), block), ports, length);
      }
    } catch (JackException | RuntimeException e) {
      watch.callbackFailed(e);
    }
    return true;
  }

  /** What the ports get in each block before any take. */
  abstract void rest(JackPort[] ports, int length);

  /** Moves a block between the ports and the take. */
  abstract void move(RunningTake take, int frame, JackPort[] ports, int length);

  /**
   * Ends the server's thread from within, and waits until it is on its way out. The server's
   * library would cancel the thread wherever it is, and in the midst of Java that ends the whole
   * process.
   */
  final void leave() throws InterruptedException {
    leaving = true;
    // Without an answer the server has ended or is stuck, and the thread waits for it for ever.
    boolean unused = left.await(LEAVE_MS, TimeUnit.MILLISECONDS);
  }
}
