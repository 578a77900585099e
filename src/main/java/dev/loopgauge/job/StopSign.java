package dev.loopgauge.job;

import java.util.concurrent.CountDownLatch;

/** Tells a job that goes on until somebody has enough that somebody has; from any thread. */
public final class StopSign {
  private final CountDownLatch asked = new CountDownLatch(1);

  /** Ends the job in order, soon. */
  public void stop() {
    asked.countDown();
  }

  /** Whether somebody has enough. */
  public boolean isAsked() {
    return asked.getCount() == 0;
  }

  /** Waits until somebody has enough. */
  public void await() throws InterruptedException {
    asked.await();
  }
}
