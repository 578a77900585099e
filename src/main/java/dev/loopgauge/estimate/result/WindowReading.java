package dev.loopgauge.estimate.result;

import java.util.List;
import java.util.Optional;

/**
 * What one window of a path's sound came to, while it goes by.
 *
 * @param fromSeconds when the window starts, from the start of the stream
 * @param toSeconds when it ends
 * @param sent how loud the reference is in it
 * @param heardDbfs how loud the return is in it
 * @param interrupted whether frames of it were lost while it was recorded: then nothing was read
 * @param clipped whether the return is clipped in it
 * @param parts where the return is known to hold the sound that was due or to lack it, from where
 *     the window before ended
 * @param delay the delay; empty where it can't be told
 */
public record WindowReading(
    double fromSeconds,
    double toSeconds,
    SentLevel sent,
    double heardDbfs,
    boolean interrupted,
    boolean clipped,
    List<ReturnPart> parts,
    Optional<FollowedDelay> delay) {
  /** Below this there is nothing but the last bit of a 24-bit converter, in dBFS rms. */
  public static final double SILENCE_DBFS = -120;

  /** Copies the list. */
  public WindowReading {
    parts = List.copyOf(parts);
  }

  /** How loud the reference is in it, in dBFS rms; negative infinity for digital silence. */
  public double sentDbfs() {
    return sent.rmsDbfs();
  }

  /** Whether sound is known not to have come back in it. */
  public boolean lacksSound() {
    return parts.stream().anyMatch(ReturnPart::lost)
        || delay.filter(read -> !read.lost().isEmpty()).isPresent();
  }

  /** How long the window is, in seconds. */
  public double lengthSeconds() {
    return toSeconds - fromSeconds;
  }

  /** The middle of the window, in seconds from the start of the stream. */
  public double middleSeconds() {
    return (fromSeconds + toSeconds) / 2;
  }
}
