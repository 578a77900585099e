package dev.loopgauge.estimate.reading;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;

/**
 * One look at a path: what went in and what came back. Both start at the same instant; their
 * lengths may differ.
 *
 * @param reference the stimulus as played, or a recording of what went in
 * @param ret the return
 * @param start when that instant was, in samples from the start of the whole capture, 0 or more
 */
public record Reading(Samples reference, Samples ret, int start) {
  /**
   * Checks that both have the same rate and hold something.
   *
   * @throws IllegalArgumentException when the rates differ, a signal is empty, or the start is
   *     negative
   */
  public Reading {
    if (!reference.rate().equals(ret.rate())) {
      throw new IllegalArgumentException(
          "reference and return must have one rate, not "
              + reference.rate().hertz()
              + " and "
              + ret.rate().hertz()
              + " Hz");
    }
    if (reference.length() == 0 || ret.length() == 0) {
      throw new IllegalArgumentException(
          "reference and return must hold samples, not "
              + reference.length()
              + " and "
              + ret.length());
    }
    if (start < 0) {
      throw new IllegalArgumentException("a reading can't start at sample " + start);
    }
  }

  /** A reading at the start of its capture. */
  public Reading(Samples reference, Samples ret) {
    this(reference, ret, 0);
  }

  /** The rate of both. */
  public SampleRate rate() {
    return reference.rate();
  }

  /** The sample of the return that the recording starts with, negative in a window on it. */
  public int recordedFrom() {
    return recordedFrom(ret);
  }

  /** The sample of the return that the recording ends before. */
  public int recordedTo() {
    return recordedTo(ret);
  }

  /** The sample of the reference that is the first to be known, negative in a window. */
  public int knownFrom() {
    return recordedFrom(reference);
  }

  /** The sample of the reference before which it is known. */
  public int knownTo() {
    return recordedTo(reference);
  }

  /** Whether the reference was cut out of sound that goes on beyond its end. */
  public boolean goesOn() {
    return reference instanceof Window;
  }

  private static int recordedFrom(Samples samples) {
    return samples instanceof Window window ? window.recordedFrom() : 0;
  }

  private static int recordedTo(Samples samples) {
    return samples instanceof Window window ? window.recordedTo() : samples.length();
  }

  /**
   * The part of this whose reference runs from a sample to before another. Where the return has
   * ended before, one sample of silence stands for it.
   */
  public Reading part(int from, int to) {
    return new Reading(
        Window.on(reference, from, to - from),
        Window.on(ret, from, Math.max(1, ret.length() - from)),
        start + from);
  }

  /**
   * The same part by itself, with silence before and after its reference, and its return moved
   * earlier by a delay.
   */
  public Reading alone(int from, int to, int delay) {
    return new Reading(reference.slice(from, to), new Window(ret, from + delay, to - from));
  }
}
