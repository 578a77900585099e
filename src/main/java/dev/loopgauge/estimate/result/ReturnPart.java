package dev.loopgauge.estimate.result;

/**
 * A part of a return of which is known whether it holds the sound that was due.
 *
 * @param fromSeconds when it starts, from the start of the stream
 * @param toSeconds when it ends
 * @param lost whether the sound did not come back in it
 */
public record ReturnPart(double fromSeconds, double toSeconds, boolean lost) {
  /** How long it is, in seconds. */
  public double seconds() {
    return toSeconds - fromSeconds;
  }
}
