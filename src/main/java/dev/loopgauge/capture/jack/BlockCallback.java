package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;

/**
 * What the server calls for each block, on a thread with no time to spare: nothing in it allocates,
 * waits or throws.
 */
abstract class BlockCallback implements JackLibrary.JackProcessCallback {
  private static final int GO_ON = 0;
  private static final int LEAVE = 1;
  private static final long LEAVE_MS = 300;

  private final ServerClient client;
  private final ServerPort[] ports;
  private final int blockSize;
  private final AtomicReference<Running> current;
  private final ServerWatch watch;
  private final CountDownLatch left = new CountDownLatch(1);
  private volatile boolean leaving;
  private volatile Thread thread;

  BlockCallback(
      ServerClient client,
      List<ServerPort> ports,
      int blockSize,
      AtomicReference<Running> current,
      ServerWatch watch) {
    this.client = client;
    this.ports = ports.toArray(new ServerPort[0]);
    this.blockSize = blockSize;
    this.current = current;
    this.watch = watch;
  }

  @Override
  public final int invoke(int block) {
    if (leaving) {
      thread = Thread.currentThread();
      left.countDown();
      return LEAVE;
    }
    try {
      // A block that has grown since doesn't fit the sends' silence; the watch reports it.
      watch.blockSize(block);
      int length = Math.min(block, blockSize);
      rest(ports, length);
      Running running = current.get();
      if (running != null) {
        move(running, client.blockTime(), block, ports, length);
      }
    } catch (RuntimeException e) {
      watch.callbackFailed(e);
    }
    return GO_ON;
  }

  /** What the ports get in each block before anything else. */
  abstract void rest(ServerPort[] ports, int length);

  /** Moves a block between the ports and what runs. */
  abstract void move(Running running, long time, int block, ServerPort[] ports, int length);

  /**
   * Ends the server's thread from within, and waits until it has ended. The server's library would
   * cancel the thread wherever it is, and in the midst of Java that ends the whole process.
   *
   * @param gone whether the server has ended: then the thread waits for it for ever, far from Java
   */
  final void leave(BooleanSupplier gone) {
    leaving = true;
    try {
      boolean answered = false;
      boolean last = false;
      while (!answered && !last) {
        last = gone.getAsBoolean();
        answered = left.await(LEAVE_MS, TimeUnit.MILLISECONDS);
      }
      if (answered) {
        thread.join(LEAVE_MS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
