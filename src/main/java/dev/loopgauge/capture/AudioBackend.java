package dev.loopgauge.capture;

import java.util.Optional;

/** A way to the sound: an operating system's audio, an audio server, or the built-in rig. */
public interface AudioBackend {
  /**
   * The name in options and documents: {@code java-sound}, {@code jack}, {@code drivers}, {@code
   * simulated}.
   */
  String name();

  /**
   * What can be used just now, or why nothing can. What other programs may hold alone isn't opened
   * for it: where its channels can't be counted otherwise, they stay uncounted. Never throws, never
   * hangs.
   */
  Availability look();

  /**
   * A device that was listed, with its channels counted. Where {@link #look} left them uncounted,
   * the device is opened for a moment, and other programs may notice.
   *
   * @throws CaptureException when it doesn't open
   */
  default AudioDevice counted(AudioDevice device) throws CaptureException {
    return device;
  }

  /** Whether its sessions are {@link GraphSession}s, whose programs state their latencies. */
  default boolean hasGraph() {
    return false;
  }

  /**
   * Which device a request would take for itself, so that other programs fall silent; empty where
   * it takes none so, or what was asked for isn't there. Nothing is opened for it that others could
   * lose. Never throws, never hangs.
   */
  default Optional<String> takenAlone(SessionRequest request) {
    return Optional.empty();
  }

  /**
   * Opens channels for playing and recording.
   *
   * @throws CaptureException when there is no such device, it is busy, it has too few channels, or
   *     it can't do what was asked; the message says which
   */
  AudioSession open(SessionRequest request) throws CaptureException;
}
