package dev.loopgauge.job;

/** Tells a job that goes on until somebody has enough that somebody has; from any thread. */
public final class StopSign {
  private volatile boolean asked;

  /** Ends the job in order, soon. */
  public void stop() {
    asked = true;
  }

  /** Whether somebody has enough. */
  public boolean isAsked() {
    return asked;
  }
}
